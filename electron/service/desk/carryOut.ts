import type { TracingDoor } from '../../../core/bench/tracingDoor.ts';
import { COMMANDS } from '../../../core/commands/commands.ts';
import type { Asking } from '../../../core/commands/kernel/asking.ts';
import type { Command } from '../../../core/commands/kernel/command.ts';
import type { Asked } from '../../../core/contract/contract.ts';
import type { View } from '../../../core/entries/view.ts';
import type { CommandId, StaffId } from '../../../core/ids.ts';
import type { Json } from '../../../core/journal/entry.ts';
import type { Executed, NotExecuted, Shop } from '../../../db/index.ts';
import { loadView } from './loadView.ts';
import { setApartRefusal } from './setApart.ts';

/** What a decision is given beside the view, but for who asks and when; tracing goes by the shop's own fault model. */
export type Tools = Omit<Asking, 'at' | 'by' | 'tracing'> & { readonly tracing: (shop: View['shop']) => TracingDoor };

/** Carries one command out: loads what it is about, asks `core` for the decision, appends what it decided. */
export function carryOut(shop: Shop, tools: Tools, device: string, asked: Asked): Promise<Executed | NotExecuted> {
  const command = COMMANDS[asked.name] as unknown as Command;
  return shop.runCommand(
    {
      command: asked.command as CommandId,
      by: asked.by as StaffId,
      device,
      asked: { name: asked.name, input: asked.input } as unknown as Json,
    },
    async (read, at) => {
      const about = command.about(asked.input);
      const view = await loadView(read, about, at, asked.by);
      const apart = setApartRefusal(read, about, view);
      if (apart) return { ok: false, refusal: apart };
      const asking = { ...tools, tracing: tools.tracing(view.shop), at, by: asked.by as StaffId };
      return command.decide(view, asked.input, asking);
    },
  );
}
