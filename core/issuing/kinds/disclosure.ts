import type { ComparedRow } from '../../approval/compare.ts';
import { rowName, wordRow } from '../../approval/compareWords.ts';
import type { OfferedPart } from '../../approval/question.ts';
import type { ComparedFacts } from '../../papers/builders/substituteDisclosure.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { minutes } from '../../time.ts';
import { amount, common, readyTold, withoutAnswer } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import { offerTotals } from '../lines/estimates.ts';
import { optionFacts } from '../lines/optionFacts.ts';
import type { Making } from '../making.ts';
import { newestQuestion, partName, yourPart } from '../worded.ts';

/** The part on offer, attribute by attribute; the lesser ones first, in words. */
export function disclosurePaper(making: Making): Paper | Lacking {
  const { job, view, words, format } = making;
  const question = newestQuestion(making, (one) => one.offer !== null);
  const offer = question?.offer;
  if (!question || !offer) return lacking('paper-nothing-asked');
  const had = view.parts.get(offer.forPart);
  const { facts } = words;
  const totals = offerTotals(making);
  const ready = readyTold(making);
  const confirmed = job.verdict?.is === 'confirmed' && job.verdict.part === offer.forPart;
  return PAPER_KINDS['substitute-part-disclosure'].build(
    {
      ...common(making),
      part: { what: had ? yourPart(making, had) : facts.aPart, verdict: confirmed ? 'confirmed' : 'named' },
      offered: {
        name: had ? partName(making, { kind: had.kind, name: offer.name }) : offer.name,
        condition: offer.condition,
        price: amount(making, offer.priceMinor),
        ...(offer.coreMinor && { coreBack: amount(making, offer.coreMinor) }),
        warranty: warranty(making, offer),
      },
      whyNotSame: offer.whyNotSame,
      rows: [...offer.rows.filter(isFelt), ...offer.rows.filter((row) => !isFelt(row))].map((row) =>
        comparedFacts(making, row),
      ),
      notice: notice(making, offer),
      afterwards: offer.afterwards.map(({ says, minutes: hands, priceMinor }) => ({
        says,
        minutes: minutes(hands),
        ...(priceMinor !== null && { price: amount(making, priceMinor) }),
      })),
      extras: offer.extras.map(({ what, priceMinor }) => ({ what, amount: amount(making, priceMinor) })),
      options: optionFacts(making, question),
      ...(totals && {
        totals: format.say(facts.totals, {
          p50: format.money(totals.p50),
          p90: format.money(totals.p90),
          limit: format.money(amount(making, job.limitMinor)),
        }),
      }),
      ...(ready !== null && { readyTold: ready }),
      validUntil: question.validUntil,
      without: withoutAnswer(making),
    },
    making.setting,
  );
}

const warranty = ({ words, format }: Making, { warrantyMonths }: OfferedPart): string =>
  warrantyMonths === 0
    ? words.facts.offered.none
    : format.say(words.facts.offered.ours, { months: format.say(words.facts.months, { n: warrantyMonths }) });

function comparedFacts({ words, setting }: Making, row: ComparedRow): ComparedFacts {
  const { yours, offered, ...worded } = wordRow(row, words.fit, setting.locale);
  return { ...worded, ...(yours !== null && { yours }), ...(offered !== null && { offered }) };
}

/** Notes by which a lesser point is no loss to this owner. */
const NO_LOSS: ReadonlySet<string> = new Set(['unused', 'enough', 'fits-the-case', 'matters-to-the-shop', 'current']);

/** Is it less, and nothing says that this owner can do without? Such points stand first. */
const isFelt = (row: ComparedRow): boolean =>
  row.verdict === 'worse' && !row.notes.some((note) => NO_LOSS.has(note.note));

/** What the owner will notice: lesser points that nothing says they can do without. */
function notice({ words, format }: Making, { rows, notKnown }: OfferedPart): string {
  const { facts, fit } = words;
  const lesser = rows.filter((row) => row.verdict === 'worse');
  const felt = rows.filter(isFelt);
  const named = (names: readonly string[]) => names.map((name) => rowName(name, fit)).join('; ');
  return [
    felt.length === 0
      ? facts.noticeNone
      : format.say(facts.notice, { points: named(felt.map((row) => row.attribute)) }),
    ...(felt.length > 0 && lesser.length > felt.length
      ? [format.say(facts.noticeRest, { n: lesser.length - felt.length })]
      : []),
    ...(notKnown.length > 0 ? [format.say(facts.notKnownRows, { points: named(notKnown) })] : []),
  ].join(' ');
}
