import words from '../../../assets/words/en/model.json' with { type: 'json' };
import tracing from '../../../assets/words/en/tracing.json' with { type: 'json' };
import { fill } from '../../../core/text/wordsFor.ts';
import type { PriorTally } from '../../../core/tracing/live/shop/closedTracing.ts';
import type { MovedPrior } from '../../../core/tracing/live/shop/learnPriors.ts';
import type { ModelDifference } from '../../../core/tracing/live/shop/modelFiles.ts';

const LONGEST = 60;
const faults: Readonly<Record<string, { readonly name: string }>> = tracing.faults;

/** One line a field: what it was, what it is. Long values are cut. */
export const differenceLines = (differences: readonly ModelDifference[]): readonly string[] =>
  differences.map(({ file, path, ...one }) =>
    fill(words.difference, { file, path, before: short(one.before), after: short(one.after) }),
  );

function short(value: unknown): string {
  if (value === undefined) return words.absent;
  const text = JSON.stringify(value);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}

/** How far the shop's own jobs moved the stated priors, with intervals, and which jobs teach nothing. */
export function learntLines(tally: PriorTally, moved: readonly MovedPrior[]): readonly string[] {
  const share = (p: number) => (100 * p).toFixed(1);
  return [
    fill(words.counted, { counted: tally.counted }),
    fill(words.excluded, tally.excluded),
    ...moved.map(({ group, fault, stated, now, jobs, of, interval, says }) =>
      fill(words.moved, {
        group,
        fault: faults[fault]?.name ?? fault,
        stated: share(stated),
        now: share(now),
        low: share(interval.low),
        high: share(interval.high),
        jobs: Number(jobs.toFixed(1)),
        of: Number(of.toFixed(1)),
        says: words.says[says],
      }),
    ),
    words.popularity,
  ];
}
