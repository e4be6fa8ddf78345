import { isDone, type Reading } from '../../job/work.ts';
import type { ProofFacts } from '../../papers/builders/returnReportFacts.ts';
import type { ReadingFacts } from '../../papers/ruler.ts';
import type { Making } from '../making.ts';
import { workName } from '../worded.ts';

/** `12.11 V`: one figure with its unit. */
const VALUE = /^(-?\d+(?:[.,]\d+)?)\s*(\D{1,8})$/u;
/** `11.40 to 12.60 V`: two figures with a unit, in whatever words. */
const RANGE = /^(-?\d+(?:[.,]\d+)?)\D+?(-?\d+(?:[.,]\d+)?)\s*(\D{1,8})$/u;

const figure = (text: string): number => Number(text.replace(',', '.'));

/** A reading that can be drawn on a scale: a figure, and both ends of what is allowed, in one unit. */
function onScale({ what, value, limit, source }: Reading): ReadingFacts | null {
  const read = VALUE.exec(value);
  const allowed = limit === null ? null : RANGE.exec(limit);
  if (!read || !allowed) return null;
  const [, is = '', unit = ''] = read;
  const [, from = '', to = '', of = ''] = allowed;
  if (unit.trim() !== of.trim()) return null;
  return {
    what,
    value: figure(is),
    unit: unit.trim(),
    atLeast: figure(from),
    atMost: figure(to),
    ...(source !== null && { source }),
  };
}

/** Is it drawn on a scale of its own? */
export const isRead = (reading: Reading): boolean => onScale(reading) !== null;

/** Readings of the steps, and of the verdict, that can be drawn. */
export function readingFacts({ job }: Making): readonly ReadingFacts[] {
  const steps = job.work.filter((work) => work.kind === 'step' && !work.struck);
  const own = job.verdict?.is === 'confirmed' ? job.verdict.readings : [];
  return [...steps.flatMap((work) => work.readings), ...own].flatMap((reading) => onScale(reading) ?? []);
}

/** `watts at the plug, off: 1.3 W` */
export const readingLine = ({ what, value }: Reading): string => `${what}: ${value}`;

const isSame = ({ setting: { locale } }: Making, a: string, b: string): boolean =>
  a.toLocaleLowerCase(locale) === b.toLocaleLowerCase(locale);

/** Each proof with its readings and their limits; one without readings says that it passed or not. */
export function proofFacts(making: Making): readonly ProofFacts[] {
  const { job, words, format } = making;
  const proofs = job.work.filter((work) => work.kind === 'proof' && isDone(work));
  return proofs.flatMap((work): ProofFacts[] => {
    const came = words.facts[work.passed === false ? 'notPassed' : 'passed'];
    if (work.readings.length === 0) return [{ what: workName(making, work), result: came }];
    return work.readings.map(({ what, value, limit, source }) => ({
      what: isSame(making, workName(making, work), what)
        ? workName(making, work)
        : `${workName(making, work)}: ${what}`,
      result: work.passed === false ? `${value}; ${came}` : value,
      ...(limit !== null && {
        limit: source === null ? limit : format.say(words.facts.limitFrom, { limit, source }),
      }),
    }));
  });
}
