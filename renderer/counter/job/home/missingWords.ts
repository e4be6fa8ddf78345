import type { JobSheet } from '../../../../core/contract/screens.ts';
import type { Missing } from '../../../../core/job/home/canGoHome.ts';
import type { Words } from '../../../kit/text/words.tsx';

/** One thing that keeps the machine from going home, in words. */
export function missingWords(missing: Missing, sheet: JobSheet, t: Words['t']): string {
  const key = `counter.missing.${missing.why}` as const;
  switch (missing.why) {
    case 'part-on-trial-inside':
      return t(key, { name: missing.name, slot: missing.slot });
    case 'ours-on-machine':
      return t(key, { thing: missing.thing, count: missing.count });
    case 'owners-part-not-inside':
    case 'needs-own-answer':
      return t(key, { name: missing.name, place: t(`counter.places.${missing.place.at}`) });
    case 'still-unplugged':
      return t(key, { slot: missing.slot });
    case 'incident-not-told':
      return t(key, { what: sheet.job.incidents.find((one) => one.id === missing.incident)?.what.value ?? '' });
    case 'question-open':
      return t(key, { says: sheet.job.questions.find((one) => one.id === missing.question)?.says ?? '' });
  }
}
