import type { Making } from '../making.ts';
import { partInText } from '../worded.ts';
import { isAsItCame } from './billed.ts';

/** Warranty on the work and on each part that was sold: until which day once it has gone home, else for how long. */
export function warrantyWords(making: Making): readonly string[] {
  const { job, settings, view, words, format } = making;
  const { facts } = words;
  if (isAsItCame(making) || job.charging === 'diagnosis-only') return [];
  const from = job.handover?.at;
  const months = (n: number) => format.say(facts.months, { n });
  const said = (n: number, until: string, lasting: string, what = '') =>
    from === undefined
      ? format.say(lasting, { months: months(n), what })
      : format.say(until, { day: format.datePlusMonths(from, n), what });
  const parts = job.agreedLines.flatMap(({ part, what, warrantyMonths }) => {
    if (part === null || warrantyMonths === 0) return [];
    const known = view.parts.get(part);
    return [
      said(warrantyMonths, facts.warrantyPartUntil, facts.warrantyPart, known ? partInText(making, known) : what),
    ];
  });
  const { work } = settings.warrantyMonths;
  return [...(work > 0 ? [said(work, facts.warrantyWorkUntil, facts.warrantyWork)] : []), ...parts];
}
