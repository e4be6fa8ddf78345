import { describe, expect, it } from 'vitest';
import { importCircles, tooDeep, upwardImports } from './floors.ts';
import { filesBelow, HOUSE } from './source.ts';

const sources = HOUSE.flatMap((area) => filesBelow(area));
const importing = (path: string, from: string) => ({ path, text: `import type { A } from '${from}';` });
const empty = (path: string) => ({ path, text: '' });

describe('core stands on floors', () => {
  it('holds in the whole of core', () => {
    expect(upwardImports(sources)).toEqual([]);
  });

  it('finds a rule that knows a command, be it for a type only, and a room that stands nowhere', () => {
    const command = empty('core/commands/home/handOver.ts');
    expect(upwardImports([importing('core/custody/place.ts', '../commands/home/handOver.ts'), command])).toHaveLength(
      1,
    );
    expect(upwardImports([importing('core/ids.ts', './commands/home/handOver.ts'), command])).toHaveLength(1);
    expect(upwardImports([empty('core/attic/a.ts')])).toEqual(['core/attic/a.ts: core/attic stands on no floor']);
  });

  it('finds two rooms of one floor that lean on each other', () => {
    expect(
      upwardImports([importing('core/fit/a.ts', '../papers/b.ts'), importing('core/papers/b.ts', '../fit/a.ts')]),
    ).toHaveLength(2);
  });

  it('lets a command look at everything below it, and a room at itself', () => {
    expect(
      upwardImports([
        importing('core/commands/home/handOver.ts', '../../custody/place.ts'),
        importing('core/custody/place.ts', './part.ts'),
        empty('core/custody/part.ts'),
      ]),
    ).toEqual([]);
  });
});

describe('no file imports itself by way of others', () => {
  it('holds in the whole house', () => {
    expect(importCircles(sources)).toEqual([]);
  });
});

describe('nothing lies too deep', () => {
  it('holds in the whole house', () => {
    expect(tooDeep(sources)).toEqual([]);
  });

  it('finds a file four folders below its top folder', () => {
    expect(tooDeep([empty('renderer/counter/job/home/old/A.tsx')])).toHaveLength(1);
    expect(tooDeep([empty('core/tracing/live/offer/a.ts')])).toEqual([]);
  });
});
