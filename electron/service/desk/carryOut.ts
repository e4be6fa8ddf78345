import type { CommandRequest } from '../../../core/commands/asked.ts';
import { commandId, staffId } from '../../../core/ids.ts';
import type { Executed, NotExecuted, Shop } from '../../../db/index.ts';
import { lookedAt } from './lookedAt.ts';
import type { Tools } from './tools.ts';

/** Carries one command out: loads what it is about, asks `core` for the decision, appends what it decided. */
export function carryOut(
  shop: Shop,
  tools: Tools,
  device: string,
  asked: CommandRequest,
): Promise<Executed | NotExecuted> {
  return shop.runCommand(
    {
      command: commandId(asked.command),
      by: staffId(asked.by),
      device,
      asked: { name: asked.name, input: asked.input },
    },
    async (read, at) => {
      const looked = await lookedAt(read, tools, asked, at);
      if ('refusal' in looked) return { ok: false, refusal: looked.refusal };
      return looked.decide();
    },
  );
}
