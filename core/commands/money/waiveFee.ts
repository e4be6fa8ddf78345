import { z } from 'zod';
import { feeAgreed } from '../../job/money/charges.ts';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zJobId, zLine } from '../kernel/fields.ts';

/** The finding fee is not asked for, with the reason, which the bill says. Refused: `no-fee-to-waive`. */
export const waiveFee = jobCommand(
  'waive-fee',
  z.strictObject({ job: zJobId, why: zLine }),
  OPEN_STAGES,
  (view, { job, why }) =>
    view.job.feeWaived || feeAgreed(view.job) === 0
      ? refuse('no-fee-to-waive', { job })
      : accept({ stream: `job:${job}`, kind: 'fee-waived', body: { why: personal('record', view.job.owner, why) } }),
);
