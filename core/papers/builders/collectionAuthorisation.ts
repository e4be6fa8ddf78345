import type { Money } from '../../money/money.ts';
import type { EpochMs } from '../../time.ts';
import { says, strongly } from '../blocks.ts';
import type { Sheet } from '../content.ts';
import type { CommonFacts, SignatureFacts } from '../facts.ts';
import { formatFor } from '../format.ts';
import type { Setting } from '../setting.ts';
import { sheet, signing } from '../sheet.ts';

/** Someone else collects the machine. Only the owner agrees to money, unless an amount is named. */
export type CollectionAuthorisationFacts = CommonFacts & {
  readonly who: string;
  readonly shows: string;
  readonly holdsUntil?: EpochMs;
  readonly mayAgreeTo?: Money;
  readonly signature?: SignatureFacts;
};

/**
 * The paper by which someone else collects the machine, laid out without drawing; amounts in minor units, moments in
 * ms of the epoch.
 */
export function collectionAuthorisation(facts: CollectionAuthorisationFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds['collection-authorisation'];
  const { who, mayAgreeTo, holdsUntil } = facts;
  return sheet('collection-authorisation', facts, setting, format, {
    lead: mayAgreeTo
      ? format.say(words.leadMoney, { name: who, amount: format.money(mayAgreeTo) })
      : format.say(words.lead, { name: who }),
    body: [
      { label: words.who, blocks: says(strongly(who)) },
      { label: words.shows, blocks: says(facts.shows) },
      { label: words.until, blocks: says(holdsUntil !== undefined && format.day(holdsUntil)) },
    ],
    signing: { on: 'last-page', line: signing(facts.signature, words.signed, setting, format) },
  });
}
