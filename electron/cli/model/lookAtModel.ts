import { existsSync } from 'node:fs';
import { join } from 'node:path';
import words from '../../../assets/words/en/model.json' with { type: 'json' };
import { noShop, type Shop } from '../../../core/job/shop.ts';
import { fill } from '../../../core/text/wordsFor.ts';
import { loadFaultModel } from '../../../core/tracing/live/loading/loadFaultModel.ts';
import { diffModels } from '../../../core/tracing/live/shop/diffModels.ts';
import { modelInUse } from '../../../core/tracing/live/shop/shopModel.ts';
import { defaultDataFolder } from '../../service/dataFolder.ts';
import type { Io } from '../command.ts';
import { withShop } from '../withShop.ts';
import type { ModelAsked } from './modelAsked.ts';
import { readModel, writeModel } from './modelFolder.ts';
import { differenceLines } from './modelText.ts';

export const inUseBy = (shop: Shop) => modelInUse({ changes: shop.models.at(-1)?.changes ?? [], learnt: shop.learnt });

/** Does something with the shop's state; without a shop at the usual place, with the model as delivered. */
function withState({ options }: ModelAsked, io: Io, does: (shop: Shop) => Promise<number>): Promise<number> {
  const isThere = existsSync(join(options.data ?? defaultDataFolder(), 'shop.db'));
  return isThere || options.data !== undefined ? withShop(options, io, ({ state }) => does(state)) : does(noShop);
}

/** Which model is in use, which editions came before, and what the last one changed. */
export const showModel = (asked: ModelAsked, io: Io): Promise<number> =>
  withState(asked, io, async (shop) => {
    const { model, refused } = inUseBy(shop);
    const edition = shop.models.at(-1);
    io.out(edition ? fill(words['in-use'], { name: edition.name, count: edition.changes.length }) : words.delivered);
    if (refused) io.out(fill(words['falls-back'], { ...refused }));
    io.out(fill(words.size, { faults: model.faults.length, steps: model.steps.length }));
    for (const { name } of shop.models.slice(0, -1).toReversed()) io.out(fill(words.before, { name }));
    for (const line of differenceLines(edition?.changes ?? [])) io.out(line);
    return 0;
  });

/** Writes the model in use to a folder, where it can be changed. Learnt priors are not in it: they stay learnt. */
export const copyModel = (asked: ModelAsked, io: Io): Promise<number> =>
  withState(asked, io, async (shop) => {
    const { folder } = asked;
    if (folder === undefined) return missing(words.folder, io);
    const { files } = inUseBy(shop);
    const there = await writeModel(folder, files);
    if (there !== null) return missing(fill(words['there-already'], { file: there }), io);
    io.out(fill(words.written, { count: Object.keys(files).length, folder }));
    return 0;
  });

export const missing = (says: string, io: Io): number => {
  io.err(says);
  return 2;
};

/** Do the files of a folder hold together? The first field that does not is named. */
export async function checkFolder({ folder }: ModelAsked, io: Io): Promise<number> {
  if (folder === undefined) return missing(words.folder, io);
  const files = await readModel(folder, io);
  if ('wrong' in files)
    return missing(fill(words['not-read'], { wrong: String(files.wrong), why: String(files.why) }), io);
  const loaded = loadFaultModel(files);
  if ('refused' in loaded) return missing(fill(words.broken, { ...loaded }), io);
  io.out(fill(words.whole, { faults: loaded.faults.length, steps: loaded.steps.length }));
  return 0;
}

/** How a folder differs from the model in use, field by field. */
export const diffFolder = (asked: ModelAsked, io: Io): Promise<number> =>
  withState(asked, io, async (shop) => {
    if (asked.folder === undefined) return missing(words.folder, io);
    const files = await readModel(asked.folder, io);
    if ('wrong' in files)
      return missing(fill(words['not-read'], { wrong: String(files.wrong), why: String(files.why) }), io);
    const lines = differenceLines(diffModels(inUseBy(shop).files, files));
    for (const line of lines.length > 0 ? lines : [words.same]) io.out(line);
    return 0;
  });
