import type { Money } from '../../money/money.ts';
import type { EpochMs } from '../../time.ts';
import { facts as factTable, says } from '../blocks.ts';
import type { Sheet } from '../content.ts';
import type { CommonFacts, SignatureFacts } from '../facts.ts';
import { formatFor, groupTag } from '../format.ts';
import type { Setting } from '../setting.ts';
import { sheet, signing } from '../sheet.ts';

/** A part of the shop's that goes home in an owner's machine and comes back by a day. */
export type LentPartFacts = CommonFacts & {
  readonly part: { readonly what: string; readonly tag: string; readonly serial?: string };
  readonly back: EpochMs;
  readonly place: string;
  readonly deposit?: Money;
  readonly ifLate: string;
  readonly ifBroken: string;
  readonly holdsData: boolean;
  readonly signature?: SignatureFacts;
};

/**
 * The agreement on a part of ours that goes home with the owner, laid out without drawing; amounts in minor units,
 * moments in ms of the epoch.
 */
export function lentPartAgreement(facts: LentPartFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds['lent-part-agreement'];
  const { part, deposit } = facts;
  return sheet('lent-part-agreement', facts, setting, format, {
    lead: format.say(words.lead, { part: part.what, day: format.day(facts.back) }),
    body: [
      {
        label: words.part,
        blocks: factTable(
          [words.what, part.what],
          [words.tag, [{ text: groupTag(part.tag), tag: true }]],
          [words.serial, part.serial],
        ),
      },
      { label: words.where, blocks: says(facts.place) },
      {
        label: words.cost,
        blocks: says(words.free, deposit && format.say(words.deposit, { amount: format.money(deposit) })),
      },
      { label: words.late, blocks: says(facts.ifLate) },
      { label: words.broken, blocks: says(facts.ifBroken) },
      { label: words.data, blocks: says(facts.holdsData && words.dataText) },
    ],
    signing: { on: 'last-page', line: signing(facts.signature, words.signed, setting, format) },
  });
}
