import { agreed } from '../../approval/consent.ts';
import { chosenOf } from '../../approval/question.ts';
import type { DeclinedToSaveDataFacts } from '../../papers/builders/declinedToSaveData.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { amount, common, wordFacts } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import type { Making } from '../making.ts';
import { newestQuestion, partName, slotWords } from '../worded.ts';

/** Someone whom the owner named on the sheet may collect it; only the owner agrees to money. */
export function collectionAuthorisationPaper(making: Making): Paper | Lacking {
  const { job, view, words, format } = making;
  const named = view.owner.mayCollect.value ?? [];
  const { signature } = job.consents;
  if (named.length === 0 || !signature || !agreed(job.consents, 'who-collects')) return lacking('paper-nobody-named');
  return PAPER_KINDS['collection-authorisation'].build(
    {
      ...common(making),
      who: format.list(named),
      shows: words.facts.collectorShows,
    },
    making.setting,
  );
}

/** The owner was asked about the data first and wanted no copy. A mark under the answer stands under its record alone. */
export function declinedToSaveDataPaper(making: Making): Paper | Lacking {
  const { words } = making;
  const question = newestQuestion(making, (one) => one.kind === 'data-first' && one.answer !== null && !one.withdrawn);
  if (!question?.answer || chosenOf(question).some((option) => option.agrees.data === 'copy'))
    return lacking('paper-data-not-declined');
  const copy = question.options.find((option) => option.agrees.data === 'copy');
  const price = copy?.agrees.items.reduce((sum, item) => sum + item.priceMinor, 0) ?? 0;
  const offered: DeclinedToSaveDataFacts['offered'] = {
    what: copy?.says ?? words.facts.copyOffered,
    ...(price > 0 && { amount: amount(making, price) }),
  };
  return PAPER_KINDS['declined-to-save-data'].build(
    {
      ...common(making),
      why: question.says,
      offered,
      risk: words.facts.declinedRisk,
      word: wordFacts(making, question.answer),
    },
    making.setting,
  );
}

/** A part of ours that goes home in the owner's machine on loan. */
export function lentPartPaper(making: Making): Paper | Lacking {
  const { view, words, format, job } = making;
  const part = [...view.parts.values()].find(
    (one) => one.title?.as === 'lent' && one.title.job === job.id && (making.part === null || one.id === making.part),
  );
  if (part?.title?.as !== 'lent' || !part.tag) return lacking('paper-nothing-lent');
  const { place } = part;
  if (place.at !== 'slot' && place.at !== 'with-owner') return lacking('paper-nothing-lent');
  const { lent } = words.facts;
  return PAPER_KINDS['lent-part-agreement'].build(
    {
      ...common(making),
      part: { what: partName(making, part), tag: part.tag },
      back: part.title.returnBy,
      place: place.at === 'slot' ? format.say(lent.place, { slot: slotWords(making, place.slot, part) }) : lent.inHand,
      ifLate: lent.late,
      ifBroken: lent.broken,
      holdsData: part.dataBearing || part.kind === 'drive',
    },
    making.setting,
  );
}
