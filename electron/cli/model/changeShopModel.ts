import { randomUUID } from 'node:crypto';
import words from '../../../assets/words/en/model.json' with { type: 'json' };
import refusals from '../../../assets/words/en/refusals.json' with { type: 'json' };
import type { CommandName } from '../../../core/commands/commands.ts';
import { zAsked } from '../../../core/contract/contract.ts';
import { fill, wordsFor } from '../../../core/text/wordsFor.ts';
import { STANDARD_MODEL_FILES } from '../../../core/tracing/live/loading/standardModel.ts';
import { diffModels } from '../../../core/tracing/live/shop/diffModels.ts';
import { modelInUse } from '../../../core/tracing/live/shop/shopModel.ts';
import { carryOut } from '../../service/desk/carryOut.ts';
import { tallyOf } from '../../service/desk/closed/closedTracings.ts';
import { openEngine } from '../../service/openEngine.ts';
import { openTools } from '../../service/openTools.ts';
import { mayAskLocally } from '../../service/people/mayAsk.ts';
import type { Io } from '../command.ts';
import { type OpenedShop, withShop } from '../withShop.ts';
import { inUseBy, missing } from './lookAtModel.ts';
import type { ModelAsked } from './modelAsked.ts';
import { readModel } from './modelFolder.ts';
import { learntLines } from './modelText.ts';

type Deed = 'use' | 'back' | 'learn';

/** What changes the shop's journal: taking an edition into use, going back, taking over or resetting priors. */
export const changeShopModel = (deed: Deed, asked: ModelAsked, io: Io): Promise<number> =>
  withShop(
    asked.options,
    io,
    async (opened) => {
      const { by } = asked.options;
      const { staff } = opened.state;
      const who = staff.find((one) => one.id === by || one.name === by) ?? (by === undefined ? staff[0] : undefined);
      if (!who) return missing(fill(words['no-staff'], { by: by ?? '' }), io);
      const does = (name: CommandName, input: unknown) => carry(opened, { name, input, by: who.id }, io);
      if (deed === 'use') return use(asked, does, io);
      if (deed === 'learn') return learn(opened, asked, does, io);
      const code = await does('goBackToModel', {});
      const before = opened.state.models.at(-2);
      const now = before ? fill(words['in-use'], { name: before.name, count: before.changes.length }) : words.delivered;
      if (code === 0) io.out(fill(words['gone-back'], { now }));
      return code;
    },
    { writes: true },
  );

type Does = (name: CommandName, input: unknown) => Promise<number>;

/** Carries a command out as the screens do; a refusal is told in words. */
async function carry(
  { shop }: OpenedShop,
  asked: { readonly by: string; readonly name: CommandName; readonly input: unknown },
  io: Io,
): Promise<number> {
  const tools = openTools(openEngine(), () => shop.lastSealedHead()?.short ?? null);
  const done = await carryOut(
    shop,
    tools,
    'command-line',
    zAsked.parse({ ...asked, command: randomUUID() }),
    mayAskLocally,
  );
  if (done.ok) return 0;
  const { says, unchanged, next } = wordsFor(done.refusal, refusals);
  io.err(`${says} ${unchanged} ${next}`);
  return 1;
}

async function use({ folder, options }: ModelAsked, does: Does, io: Io): Promise<number> {
  if (folder === undefined) return missing(words.folder, io);
  if (options.name === undefined) return missing(words.name, io);
  const files = await readModel(folder, io);
  if ('wrong' in files)
    return missing(fill(words['not-read'], { wrong: String(files.wrong), why: String(files.why) }), io);
  const changes = diffModels(STANDARD_MODEL_FILES, files);
  if (changes.length === 0) return missing(words.same, io);
  const code = await does('useModel', { name: options.name, changes });
  if (code === 0) io.out(fill(words.used, { name: options.name }));
  return code;
}

/** Prints how far closed jobs would move the priors, or moved them; takes over or resets when asked. */
async function learn({ shop, state }: OpenedShop, { options }: ModelAsked, does: Does, io: Io): Promise<number> {
  if (options.take === 'reset') {
    const code = await does('resetPriors', {});
    if (code === 0) io.out(words.reset);
    return code;
  }
  const tally = await tallyOf(await shop.read(), inUseBy(state).model);
  const { moved } = modelInUse({ changes: state.models.at(-1)?.changes ?? [], learnt: tally });
  for (const line of learntLines(tally, moved)) io.out(line);
  if (options.take !== 'yes') {
    io.out(words['not-taken']);
    return 0;
  }
  const code = await does('takeOverPriors', { tally });
  if (code === 0) io.out(words.taken);
  return code;
}
