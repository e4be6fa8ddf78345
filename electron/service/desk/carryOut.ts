import type { CommandRequest } from '../../../core/commands/asked.ts';
import { commandId, staffId } from '../../../core/ids.ts';
import type { Executed, NotExecuted, OpenShop } from '../../../db/index.ts';
import type { MayAsk } from '../people/mayAsk.ts';
import { lookedAt } from './lookedAt.ts';
import type { Tools } from './tools.ts';

/**
 * Carries one command out: loads what it is about, asks `core` for the decision, appends what it decided. An id that was
 * carried out before has its answer without any of that.
 * @param mayAsk Whether whoever asks may; left out by the program itself, which asks in somebody's name.
 */
export function carryOut(
  shop: OpenShop,
  tools: Tools,
  device: string,
  asked: CommandRequest,
  mayAsk: MayAsk = anybody,
): Promise<Executed | NotExecuted> {
  const run = () => carriedOut(shop, tools, device, asked, mayAsk);
  return asked.name === 'eraseOwner' ? shop.erasing(asked.input.owner, run) : run();
}

function carriedOut(
  shop: OpenShop,
  tools: Tools,
  device: string,
  asked: CommandRequest,
  mayAsk: MayAsk,
): Promise<Executed | NotExecuted> {
  return shop.runCommand(
    {
      command: commandId(asked.command),
      by: staffId(asked.by),
      device,
      asked: { name: asked.name, input: asked.input },
    },
    async (read, at) => {
      const refusal = await mayAsk(read, asked);
      if (refusal) return { ok: false, refusal };
      const looked = await lookedAt(read, shop, tools, asked, at);
      if ('refusal' in looked) return { ok: false, refusal: looked.refusal };
      return looked.decide();
    },
  );
}

const anybody: MayAsk = () => Promise.resolve(null);
