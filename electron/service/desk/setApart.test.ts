import { describe, expect, it } from 'vitest';
import type { About } from '../../../core/commands/kernel/command.ts';
import type { JobId, PartId } from '../../../core/ids.ts';
import type { Stream } from '../../../core/journal/entry.ts';
import { aMachine, aPart } from '../../../tests/builders/custody.ts';
import { aJobAt, viewOf } from '../../../tests/builders/jobAt.ts';
import { setApartRefusal } from './setApart.ts';

const part = aPart();
const view = { ...viewOf(aJobAt('tracing')), machine: aMachine({ parts: [part.id] }) };
const about: About = { job: 'j' as JobId };
const broken = (...streams: readonly Stream[]) => ({
  setApart: () => streams.map((stream) => ({ stream, unreadable: [{ seq: 12, wrong: 'not-an-entry' as const }] })),
});

describe('a stream with an entry that cannot be read', () => {
  it.each(['job:j', 'owner:judith', 'machine:m', `part:${part.id}`] as const)('%s: nobody acts on it', (stream) => {
    expect(setApartRefusal(broken(stream), about, view)).toEqual({ refused: 'stream-set-apart', stream, entry: 12 });
  });

  it('a part that only the command names is looked at too', () => {
    const named = { ...about, parts: ['other' as PartId] };
    expect(setApartRefusal(broken('part:other'), named, view)?.refused).toBe('stream-set-apart');
    expect(setApartRefusal(broken('part:other'), about, view)).toBeNull();
  });

  it('other jobs, and what lies in a rig, keep nothing back', () => {
    expect(setApartRefusal(broken('job:k', 'machine:rig'), about, view)).toBeNull();
    expect(setApartRefusal(broken(), about, view)).toBeNull();
  });
});
