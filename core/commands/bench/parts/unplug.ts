import { z } from 'zod';
import { mayNotOpen } from '../../../job/bench/mayNotOpen.ts';
import { jobCommand } from '../../kernel/command.ts';
import { accept, refuse } from '../../kernel/decision.ts';
import { zId, zJobId, zLine, zPartId } from '../../kernel/fields.ts';
import { openUnitOfWork } from '../../kernel/unitOfWork.ts';
import { noneOfThisMachine } from '../noneOfThisMachine.ts';
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
    const unknown =
      mayNotOpen(view.job) ?? noneOfThisMachine(view, { slots: input.slots, parts: input.out.map((one) => one.part) });
    if (unknown) return { ok: false, refusal: unknown };
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

/** What is named and unplugged is plugged in again. */
export const plugIn = jobCommand(
  'plug-in',
  z.strictObject({ job: zJobId, slots: z.array(zId).min(1).max(20) }),
  ['tracing', 'fitting', 'proving', 'home-as-it-came', 'first-power-on'],
  (view, { slots: named }) => {
    const unknown = noneOfThisMachine(view, { slots: named });
    if (unknown) return { ok: false, refusal: unknown };
    const slots = named.filter((slot) => view.machine?.unplugged.includes(slot));
    if (slots.length === 0) return refuse('nothing-to-write');
    return accept({ stream: `machine:${view.job.machine}`, kind: 'plugged-in', body: { slots } });
  },
);
