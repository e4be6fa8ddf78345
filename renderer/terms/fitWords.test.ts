import { describe, expect, it } from 'vitest';
import { fits } from '../../core/fit/fits.ts';
import { herMachine, wall } from '../../tests/builders/harrowmouth.ts';
import { catalogue } from '../catalogue.ts';
import { wordsOf } from '../kit/text/wordsOf.ts';
import { decides, groundWords } from './fitWords.ts';

const words = wordsOf({ catalogue, locale: 'en-GB', zone: 'Europe/London', now: () => 0 });

describe('grounds of fit in words', () => {
  it('a no names the fact, both values and the source', () => {
    const [reason] = decides(fits(wall.S08, 'socket', herMachine));
    expect(reason && groundWords(reason, words)).toMatch(/^Socket.*AM4.*LGA1200 \(.+\)\.$/);
  });

  it('what is not known says which fact to look at, on what', () => {
    const { length: _, ...attributes } = wall.S04.attributes;
    const grounds = decides(fits({ ...wall.S04, attributes }, 'x16', herMachine)).map((reason) =>
      groundWords(reason, words),
    );
    expect(grounds).toEqual([
      'Length of the card in the case – this part: not known; the machine: 350 mm (as recorded). Look at: length (this part).',
    ]);
  });

  it('no ground of any part of the wall in any slot leaves a gap unfilled', () => {
    for (const part of Object.values(wall))
      for (const { id } of herMachine.slots.slots)
        for (const reason of fits(part, id, herMachine).reasons) {
          const text = groundWords(reason, words);
          expect([text, /[{}]|fits\.|undefined/.test(text)]).toEqual([text, false]);
        }
  });
});
