import { describe, expect, it } from 'vitest';
import type { Stream } from '../../../core/journal/entry.ts';
import { setApartRefusal } from './setApart.ts';

const broken = (...streams: readonly Stream[]) => ({
  setApart: () => streams.map((stream) => ({ stream, unreadable: [{ seq: 12, wrong: 'not-an-entry' as const }] })),
});

describe('a stream with an entry that cannot be read', () => {
  it.each(['job:j', 'owner:judith', 'machine:m', 'part:p', 'enquiry:e', 'people'] as const)(
    '%s: nobody acts on it where a command is about it',
    (stream) => {
      expect(setApartRefusal(broken(stream), new Set([stream]))).toEqual({
        refused: 'stream-set-apart',
        stream,
        entry: 12,
      });
      expect(setApartRefusal(broken(stream), new Set(['job:k', 'shop']))).toBeNull();
    },
  );

  it('the shop’s own keeps back only who asks it anything', () => {
    expect(setApartRefusal(broken('shop'), new Set(['shop']))).toBeNull();
  });

  it('none keeps nothing back', () => {
    expect(setApartRefusal(broken(), new Set(['job:j']))).toBeNull();
  });
});
