import { z } from 'zod';
import { stillHere } from '../../job/home/stillHere.ts';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zCount, zId, zJobId, zLine } from '../kernel/fields.ts';

/**
 * Something that came along cannot be given back: how many of it, and what became of it. The machine may go home without
 * it, and the return report, which is signed for, says so. Refused: `no-such-thing`.
 */
export const reportLostThing = jobCommand(
  'report-lost-thing',
  z.strictObject({ job: zJobId, id: zId, count: zCount, says: zLine }),
  OPEN_STAGES,
  (view, { job, ...lost }) => {
    const here = stillHere(view.job).find((one) => one.id === lost.id)?.count ?? 0;
    return here < lost.count
      ? refuse('no-such-thing', { count: lost.count, here })
      : accept({
          stream: `job:${job}`,
          kind: 'thing-lost',
          body: { ...lost, says: personal('record', view.job.owner, lost.says) },
        });
  },
);
