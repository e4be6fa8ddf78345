import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { staffId } from '../../core/ids.ts';
import { emptyPlace } from '../../electron/cli/demo/emptyPlace.ts';
import { runDemo } from '../../electron/cli/demo/runDemo.ts';
import type { Chapter } from '../../electron/cli/demo/tellStory.ts';
import { answersOf, unchangingOf } from './answersOf.ts';
import { KEPT_SHOPS } from './keptShops.ts';
import { openAt } from './openKept.ts';

/**
 * `npm run keep-shop -- NAME CHAPTER`: makes a shop with the code as it stands, to be kept beside the older ones: the
 * demo's story up to a chapter, its papers, and what it answers. NAME stands in `keptShops.ts`. What is kept is never
 * made anew: a folder that is there is refused.
 */
const [name, chapter] = process.argv.slice(2);
const kept = KEPT_SHOPS.find((one) => one.name === name);
if (!kept || !chapter)
  throw new Error(`Say which: ${KEPT_SHOPS.map((one) => one.name).join(', ')}; and up to which chapter`);
const place = emptyPlace(join(kept.folder, 'shop'));
if ('why' in place) throw new Error(`${place.path}: ${place.why}`);

await runDemo({ out: null, machine: null, print: console.log, kept: place, until: chapter as Chapter });
if (kept.pin !== undefined) {
  const first = await openAt(place, kept.at);
  // The first PIN is a keeper's, who then gives the others theirs.
  const [bram, bramsPin] = [staffId('bram'), '4711'];
  await first.asks.enter({ who: bram, pin: null });
  await first.asks.setPin({ who: bram, pin: bramsPin, own: null });
  await first.asks.setPin({ who: staffId('mina'), pin: kept.pin, own: bramsPin });
  await first.close();
}
const { shop, asks, close } = await openAt(place, kept.at, kept.pin);
const answers = await answersOf(shop, asks);
const write = (path: string, what: unknown) =>
  writeFileSync(join(kept.folder, path), `${JSON.stringify(what, null, 2)}\n`);
write('answers.json', answers);
write('unchanging.json', await unchangingOf(shop, answers));
mkdirSync(join(kept.folder, 'papers'));
for (const { job } of Object.values(answers.jobs)) {
  for (const { number } of job.papers) {
    const file = await asks.paperFile({ number });
    writeFileSync(join(kept.folder, 'papers', `${number}.pdf`), new Uint8Array(await file.arrayBuffer()));
  }
}
await close();
