import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zId, zKind, zLine, zMachineId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/** A second rig: a machine of our own with slots, in which owners' parts are tried. The shop counts it among its rigs. */
export const knowRig = shopCommand(
  'know-rig',
  z.strictObject({
    rig: zMachineId,
    called: zLine,
    slots: z
      .array(z.strictObject({ id: zId, takes: zKind, order: z.int().min(1).max(99) }))
      .min(1)
      .max(60),
  }),
  (input) => ({ machine: input.rig }),
  (view, input, asking) => {
    if (view.machine) return refuse('rig-known', { rig: input.rig });
    const unit = openUnitOfWork(view, asking);
    unit.add(`machine:${input.rig}`, 'machine-known', {
      id: input.rig,
      owner: null,
      tag: null,
      called: input.called,
      serial: null,
    });
    unit.add(`machine:${input.rig}`, 'slots-written', {
      slots: input.slots.map((slot) => ({ ...slot, source: 'by-hand' as const })),
      gaps: [],
    });
    const rigs = view.shop.settings?.rigs;
    if (rigs && !rigs.includes(input.rig))
      unit.add('shop', 'shop-changed', { settings: { rigs: [...rigs, input.rig] } });
    return unit.accept();
  },
);
