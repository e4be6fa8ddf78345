import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zMachineId, zPartId, zTag } from '../kernel/fields.ts';

const zOn = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('part'), part: zPartId }),
  z.strictObject({ is: z.literal('machine'), machine: zMachineId }),
  z.strictObject({ is: z.literal('nothing') }),
]);

/**
 * Makes a tag void for good: torn, unreadable, lost. A part or machine is then known by its place until it gets
 * another; a pre-printed tag that hangs on nothing is voided too, so that a lost sheet cannot come back.
 * Refused for a tag that is not on what is named; the database refuses one that is bound elsewhere, or void already.
 */
export const voidTag = shopCommand(
  'void-tag',
  z.strictObject({ tag: zTag, on: zOn }),
  ({ on }) => ({
    ...(on.is === 'part' && { parts: [on.part] }),
    ...(on.is === 'machine' && { machine: on.machine }),
  }),
  (view, { tag, on }) => {
    switch (on.is) {
      case 'part': {
        const part = view.parts.get(on.part);
        if (!part) return refuse('no-such-part', { part: on.part });
        if (part.tag !== tag) return refuse('tag-not-on-it', { tag, name: part.name });
        return accept({ stream: `part:${part.id}`, kind: 'part-tagged', body: { tag: null } });
      }
      case 'machine': {
        const { machine } = view;
        if (!machine) return refuse('no-such-machine', { machine: on.machine });
        if (machine.tag !== tag) return refuse('tag-not-on-it', { tag, name: machine.called });
        return accept({ stream: `machine:${machine.id}`, kind: 'machine-tagged', body: { tag: null } });
      }
      case 'nothing':
        return accept({ stream: 'shop', kind: 'tag-voided', body: { tag } });
    }
  },
);
