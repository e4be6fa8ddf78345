import type { Money } from '../../money/money.ts';
import { says, strongly } from '../blocks.ts';
import type { Sheet } from '../content.ts';
import type { CommonFacts, WordFacts } from '../facts.ts';
import { formatFor } from '../format.ts';
import type { Setting } from '../setting.ts';
import { howGiven, sheet, signing } from '../sheet.ts';

/** Signed by pen when a copy was offered before risky work and the owner wants none. */
export type DeclinedToSaveDataFacts = CommonFacts & {
  readonly why: string;
  readonly offered: { readonly what: string; readonly amount?: Money };
  readonly risk: string;
  readonly word: WordFacts;
};

/**
 * The paper that a copy was offered and declined, laid out without drawing; amounts in minor units, moments in ms of
 * the epoch.
 */
export function declinedToSaveData(facts: DeclinedToSaveDataFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds['declined-to-save-data'];
  const { offered, word } = facts;
  const how = howGiven(word.given, setting, format);
  return sheet('declined-to-save-data', facts, setting, format, {
    lead: words.lead,
    body: [
      { label: words.why, blocks: says(facts.why) },
      {
        label: words.offered,
        blocks: says(
          offered.amount
            ? format.say(words.offeredText, { what: offered.what, amount: format.money(offered.amount) })
            : offered.what,
        ),
      },
      { label: words.risk, blocks: says(strongly(facts.risk)) },
      { label: words.word, blocks: says(`${word.who}, ${format.dayTime(word.at)}, ${how}`) },
    ],
    signing: { on: 'last-page', line: signing(undefined, words.signed, setting, format) },
  });
}
