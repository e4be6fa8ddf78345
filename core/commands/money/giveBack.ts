import { z } from 'zod';
import { charges } from '../../job/money/charges.ts';
import { AT_THE_DOOR } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zJobId } from '../kernel/fields.ts';
import { PAID_BY, wentAsItCame, zSome } from './bookCharge.ts';

/** Gives back what was paid beyond what it comes to: a deposit on a job that came to less, and no more than that. */
export const giveBack = jobCommand(
  'give-back',
  z.strictObject({ job: zJobId, minor: zSome, how: z.enum(PAID_BY) }),
  AT_THE_DOOR,
  (view, { job: id, minor, how }) => {
    const { owedMinor, paidMinor } = charges(view.job, wentAsItCame(view.job));
    const mostMinor = Math.max(0, paidMinor - owedMinor);
    if (minor > mostMinor) return refuse('given-back-too-much', { minor, paidMinor, mostMinor });
    return accept({ stream: `job:${id}`, kind: 'paid', body: { minor: -minor, how, for: 'back' } });
  },
);
