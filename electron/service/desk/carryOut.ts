import type { Asked } from '../../../core/contract/contract.ts';
import type { CommandId, StaffId } from '../../../core/ids.ts';
import type { Json } from '../../../core/journal/entry.ts';
import type { Executed, NotExecuted, Shop } from '../../../db/index.ts';
import { lookedAt } from './lookedAt.ts';
import type { Tools } from './tools.ts';

/** Carries one command out: loads what it is about, asks `core` for the decision, appends what it decided. */
export function carryOut(shop: Shop, tools: Tools, device: string, asked: Asked): Promise<Executed | NotExecuted> {
  return shop.runCommand(
    {
      command: asked.command as CommandId,
      by: asked.by as StaffId,
      device,
      asked: { name: asked.name, input: asked.input } as unknown as Json,
    },
    async (read, at) => {
      const looked = await lookedAt(read, tools, asked, at);
      if ('refusal' in looked) return { ok: false, refusal: looked.refusal };
      return looked.command.decide(looked.view, asked.input, looked.asking);
    },
  );
}
