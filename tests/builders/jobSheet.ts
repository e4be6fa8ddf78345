import type { JobSheet } from '../../core/contract/screens.ts';
import type { Part } from '../../core/custody/ledger.ts';
import type { Estimate } from '../../core/job/estimate.ts';
import { canGoHome } from '../../core/job/home/canGoHome.ts';
import type { Job } from '../../core/job/job.ts';
import { charges } from '../../core/job/money/charges.ts';
import { bandOf } from '../../core/job/promise/band.ts';
import { phoneSentence } from '../../core/job/promise/phoneSentence.ts';
import type { Stage } from '../../core/stage.ts';
import { epochMs, minutes } from '../../core/time.ts';
import { aMachine } from './custody.ts';
import { aJobAt, judith } from './jobAt.ts';

/** What a screen is handed of a job at a stage, reckoned from it as the service does. */
export function aJobSheet(
  stage: Stage,
  says: Partial<Job> = {},
  parts: readonly Part[] = [],
  machine = aMachine(),
): JobSheet {
  const job = aJobAt(stage, { parts: parts.map(({ id }) => id), ...says });
  return {
    seq: 1,
    job,
    owner: judith,
    machine,
    parts,
    rigs: [],
    charges: charges(job, false),
    missing: canGoHome(job, machine, new Map(parts.map((part) => [part.id, part]))),
    phone: phoneSentence(job, null, epochMs(0)),
    band: bandOf(job),
    outlook: null,
    unreadable: [],
    computing: null,
  };
}

/** An estimate that comes to so much at the middle and in nine of ten cases, in minor units. */
export const anEstimate = (
  price: Estimate['price'],
  withPart: Estimate['withPart'] = null,
): Job['estimates'][number] => ({
  moment: 'seen',
  handsOn: { p10: minutes(10), p50: minutes(20), p90: minutes(40) },
  price,
  withPart,
  passesLimit: 0.1,
  drivers: [],
  seed: 1,
  paths: 1000,
  policy: 'ratio',
  at: epochMs(0),
});
