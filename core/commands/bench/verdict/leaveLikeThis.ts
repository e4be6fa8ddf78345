import { z } from 'zod';
import { OPEN_STAGES } from '../../../stage.ts';
import { jobCommand } from '../../kernel/command.ts';
import { accept, refuse } from '../../kernel/decision.ts';
import { zJobId, zLine } from '../../kernel/fields.ts';

/** The bench is left as it stands: what is open and unplugged, where things lie, what must not be powered. */
export const leaveLikeThis = jobCommand(
  'leave-like-this',
  z.strictObject({
    job: zJobId,
    open: z.array(zLine).max(20),
    unplugged: z.array(zLine).max(40),
    lying: z.array(z.strictObject({ what: zLine, where: zLine })).max(40),
    doNotPower: zLine.nullable(),
  }),
  OPEN_STAGES,
  (_view, { job, ...card }) => accept({ stream: `job:${job}`, kind: 'left-like-this', body: card }),
);

/** Whoever goes on has looked: it is as the card says. Refused: `nothing-left-like-this`, also where it was confirmed before. */
export const confirmLeft = jobCommand('confirm-left', z.strictObject({ job: zJobId }), OPEN_STAGES, (view, { job }) =>
  view.job.left && !view.job.left.confirmed
    ? accept({ stream: `job:${job}`, kind: 'left-confirmed', body: {} })
    : refuse('nothing-left-like-this', {}),
);
