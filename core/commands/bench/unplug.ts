import { z } from 'zod';
import { mayNotOpen } from '../../job/bench/mayNotOpen.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept } from '../kernel/decision.ts';
import { zId, zJobId, zLine, zPartId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { moveFromWhereItIs } from './moveOut.ts';

/** Unplugs what must not run; a part that comes out altogether goes to the tray. */
export const unplug = jobCommand(
  'unplug',
  z.strictObject({
    job: zJobId,
    slots: z.array(zId).min(1).max(20),
    out: z.array(z.strictObject({ part: zPartId, tray: zLine })).max(10),
  }),
  ['taken-in', 'first-power-on', 'tracing', 'fitting', 'proving', 'home-as-it-came'],
  (view, input, asking) => {
    const closed = mayNotOpen(view.job);
    if (closed) return { ok: false, refusal: closed };
    const unit = openUnitOfWork(view, asking);
    const rest = input.slots.filter((slot) => view.machine?.inside[slot]);
    if (rest.length > 0) unit.add(`machine:${view.job.machine}`, 'unplugged', { slots: rest });
    for (const { part, tray } of input.out) {
      const refusal = moveFromWhereItIs(unit, part, { at: 'tray', tray, job: input.job }, { by: 'hand' }, asking);
      if (refusal) return { ok: false, refusal };
    }
    return unit.accept();
  },
  (input) => ({ parts: input.out.map((one) => one.part), papers: ['part-tag'] }),
);

/** Everything named is plugged in again. */
export const plugIn = jobCommand(
  'plug-in',
  z.strictObject({ job: zJobId, slots: z.array(zId).min(1).max(20) }),
  ['tracing', 'fitting', 'proving', 'home-as-it-came', 'first-power-on'],
  (view, { slots }) => accept({ stream: `machine:${view.job.machine}`, kind: 'plugged-in', body: { slots } }),
);
