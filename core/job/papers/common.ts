import type { Part } from '../../custody/ledger.ts';
import { formatTag } from '../../custody/tag.ts';
import type { Money } from '../../money/money.ts';
import type { CommonFacts, EstimateFacts, SignatureFacts, WordFacts } from '../../papers/facts.ts';
import { epochMs, minutes } from '../../time.ts';
import type { Answer } from '../../word/question.ts';
import type { Signature } from '../../word/signature.ts';
import { fill } from '../../wording/wordsFor.ts';
import type { Estimate } from '../estimate.ts';
import type { PaperAsked } from './facts.ts';
import { wordOf } from './jobWords.ts';

export const wordsOf = ({ asking, view }: PaperAsked) => asking.jobWords(view.owner.language);

/** An amount in the shop's currency. */
export const amount = ({ settings }: PaperAsked, minor: number): Money => ({ minor, currency: settings.currency });

/** A personal value, or the word for what was erased. */
export const opened = (asked: PaperAsked, value: string | null | undefined): string =>
  value ?? wordsOf(asked).facts.erased;

/** What every paper takes: number, shop, owner, machine, the last sealed head. */
export function common(asked: PaperAsked): CommonFacts {
  const { view, settings, asking, older, number } = asked;
  const { owner, machine, job } = view;
  const reach = owner.reach.value;
  const address = owner.address?.value?.split('\n');
  return {
    number,
    issuedAt: asking.at,
    headShort: asking.lastHead ?? '–',
    shop: { name: settings.name, address: settings.address.split('\n'), phone: settings.phone },
    owner: {
      name: opened(asked, owner.name.value),
      ...(address && { address }),
      ...(reach?.phone && { phone: reach.phone }),
      ...(reach?.mail && { mail: reach.mail }),
    },
    machine: { tag: formatTag(job.tag), what: machine.called },
    ...(older && { supersedes: { number: older.number, issuedAt: epochMs(older.at) } }),
  };
}

/** Told or seen terms in the owner's words. */
export const symptomWords = (asked: PaperAsked, ids: readonly string[]): readonly string[] =>
  ids.map((id) => (wordsOf(asked).symptoms as Record<string, { readonly owner: string }>)[id]?.owner ?? id);

/** A signature as a paper draws it. */
export const signatureFacts = (asked: PaperAsked, signature: Signature): SignatureFacts => ({
  who: opened(asked, signature.name.value),
  at: signature.at,
  drawn: signature.drawn?.value ?? null,
});

/** The estimate of a moment, work only. */
export const estimateFacts = (asked: PaperAsked, estimate: Estimate): EstimateFacts => ({
  minutes: {
    p10: minutes(Math.round(estimate.handsOn.p10)),
    p50: minutes(Math.round(estimate.handsOn.p50)),
    p90: minutes(Math.round(estimate.handsOn.p90)),
  },
  price: {
    p10: amount(asked, Math.round(estimate.handsOn.p10 * asked.view.job.perMinuteMinor)),
    p50: amount(asked, estimate.price.p50),
    p90: amount(asked, estimate.price.p90),
  },
  passesLimit: estimate.passesLimit,
});

/** Who gave the word, how, and who heard it. */
export function wordFacts(asked: PaperAsked, answer: Answer, heardBy: string): WordFacts {
  const { how } = answer;
  const given =
    how.by === 'counter'
      ? ({ how: 'at-the-counter', signature: signatureFacts(asked, how.signature) } as const)
      : how.by === 'phone'
        ? ({
            how: 'by-phone',
            phone: opened(asked, how.number.value),
            readBack: opened(asked, how.readBack.value),
          } as const)
        : ({ how: 'in-writing', words: opened(asked, how.words.value) } as const);
  return { who: opened(asked, answer.name.value), at: how.by === 'counter' ? answer.at : how.at, heardBy, given };
}

/** What a member of the shop is called. */
export const staffName = ({ view }: PaperAsked, id: string): string =>
  view.shop.staff.find((one) => one.id === id)?.name ?? id;

/** Where a part is, in the owner's words. */
export function placeWords(asked: PaperAsked, part: Part): string {
  const { facts } = wordsOf(asked);
  const { place } = part;
  if (place.at === 'slot') return fill(facts.inSlot, { slot: place.slot });
  if (place.at === 'kept') return fill(facts.keptAt, { shelf: place.shelf });
  if (place.at === 'with-owner') return facts.withYou;
  return part.belongs.to === 'shop' ? facts.inShop : facts.elsewhere;
}

/** The tax of the shop, as a sentence. */
export const taxSays = (asked: PaperAsked): string =>
  fill(asked.settings.tax.inside ? wordsOf(asked).facts.tax.inside : wordsOf(asked).facts.tax.outside, {
    rate: asked.settings.tax.permille / 10,
  });

export const changedWords = (asked: PaperAsked): readonly string[] =>
  asked.view.job.told.changed.map(({ id, since, what }) =>
    [wordOf(wordsOf(asked).history.changed, id), since, what?.value].filter(Boolean).join(', '),
  );
