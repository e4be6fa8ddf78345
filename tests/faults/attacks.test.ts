import { describe, expect, it } from 'vitest';
import { ATTACKS } from './attacks.ts';

/** The short form of `npm run faults`; `KNOWNGOOD_LONG=1` asks for the long one. */
const short = !process.env.KNOWNGOOD_LONG;

describe('a shop survives', () => {
  it.each(ATTACKS)(
    '$name',
    async ({ run }) => {
      const { tries, survived, lost, said } = await run({ short });
      expect({ survived, lost }, said.join(' | ')).toEqual({ survived: tries, lost: 0 });
      expect(tries).toBeGreaterThan(0);
    },
    short ? 60_000 : 3_600_000,
  );
});
