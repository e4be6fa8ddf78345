import { z } from 'zod';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zCount, zJobId, zLine } from '../kernel/fields.ts';

/** Something of ours goes on or into the machine: it must come off before the machine goes home. */
export const putOursOn = jobCommand(
  'put-ours-on',
  z.strictObject({ job: zJobId, thing: zLine, count: zCount }),
  OPEN_STAGES,
  (_view, { job, ...thing }) => accept({ stream: `job:${job}`, kind: 'ours-on', body: thing }),
);

/** Something of ours comes off. */
export const takeOursOff = jobCommand(
  'take-ours-off',
  z.strictObject({ job: zJobId, thing: zLine, count: zCount }),
  OPEN_STAGES,
  (view, { job, ...thing }) => {
    const on = view.job.shopItemsOn.find((one) => one.thing === thing.thing)?.count ?? 0;
    if (on < thing.count) return refuse('not-on-the-machine', { thing: thing.thing, on, asked: thing.count });
    return accept({ stream: `job:${job}`, kind: 'ours-off', body: thing });
  },
);
