import type { ReckoningSheet } from '../../core/contract/reckoningSheet.ts';
import { prng } from '../../core/figures/prng.ts';
import { ownLead } from '../../core/job/promise/leadTimes.ts';
import { calibrationOf, type Scored } from '../../core/labour/calibration/calibration.ts';
import { catalogueOf } from '../../core/labour/tasks/catalogue.ts';
import { learnTimes, movedTime, type TimeSeen } from '../../core/labour/tasks/learnTimes.ts';
import type { Currency } from '../../core/money/money.ts';
import { standardModel } from '../../core/tracing/live/loading/standardModel.ts';
import { type ClosedTracing, tallyJobs } from '../../core/tracing/live/shop/closedTracing.ts';
import { learnPriors } from '../../core/tracing/live/shop/learnPriors.ts';

const model = standardModel();
const chance = prng(41);

/** Jobs that take a fifth longer than said, invented by chance. */
const scored: readonly Scored[] = Array.from({ length: 41 }, () => {
  const middle = 40 + 90 * chance.next();
  const at = (z: number) => middle * Math.exp(0.45 * z);
  return { p10: at(-1.28), p50: middle, p90: at(1.28), took: 1.2 * at(chance.nextNormal()) };
});

const seen = (task: string, count: number, minutes: number): readonly TimeSeen[] =>
  Array.from({ length: count }, () => ({
    task,
    by: 'bram',
    handsOn: minutes * Math.exp(0.4 * chance.nextNormal()),
    waiting: null,
  }));
const times = learnTimes(catalogueOf(model), [
  ...seen('board-loan', 9, 34),
  ...seen('dimm-press', 40, 2),
  ...seen('cpu-loan', 3, 9),
  ...seen('fit-and-reassemble', 31, 14),
  ...seen('look-inside', 36, 1.8),
]);

const job = (fault: string, ended: ClosedTracing['ended'] = 'confirmed'): ClosedTracing => ({
  groups: ['no-reaction'],
  fault,
  ended,
  cameBack: false,
});
const tally = tallyJobs(model, [
  ...Array.from({ length: 14 }, () => job('fp-switch')),
  ...Array.from({ length: 4 }, () => job('psu-dead')),
  ...Array.from({ length: 6 }, () => job('board-standby', 'named')),
  job('board-standby'),
]);

/** Invented content: a shop after 47 closed jobs. */
export const RECKONED: ReckoningSheet = {
  currency: 'GBP' as Currency,
  jobs: 47,
  calibration: [
    { moment: 'told', figures: calibrationOf(scored) },
    { moment: 'seen', figures: calibrationOf(scored.slice(0, 4)) },
  ],
  notScored: { asItCame: 4, nothingDone: 1, forgotten: 1, noEstimate: 0 },
  times: times.flatMap(({ id, of, source, own }) =>
    own.handsOn && own.handsOn.times > 0
      ? [
          {
            task: id,
            of,
            which: 'handsOn' as const,
            source,
            stated: own.handsOn.stated,
            times: own.handsOn.times,
            ...movedTime(own.handsOn),
          },
        ]
      : [],
  ),
  timesLeftOut: { struck: 2, forgotten: 1, untouched: 11, otherWork: 5, unknown: 0 },
  priors: {
    moved: learnPriors(model, tally).moved,
    tally: { counted: tally.counted, excluded: tally.excluded },
    takenOver: null,
  },
  lead: ownLead({ low: 1, likely: 2, high: 7 }, [3, 4, 2, 6, 5]),
  thoughts: { scored: 12, right: 7, engineRight: 8, open: 3 },
  losses: [
    { year: 2026, cause: 'known', incidents: 2, minor: 7400 },
    { year: 2026, cause: 'unknown', incidents: 1, minor: 2500 },
  ],
};
