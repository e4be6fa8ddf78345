import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readText } from '../../core/readings/readText.ts';
import { fileWallet, isOpenRefusal, type OpenShop, openShop } from '../../db/index.ts';
import { storyClock } from '../../electron/cli/demo/clock.ts';
import { originalStory } from '../../electron/cli/demo/originalStory.ts';
import { STORY } from '../../electron/cli/demo/story.ts';
import { openTeller } from '../../electron/cli/demo/teller.ts';
import { tellStory } from '../../electron/cli/demo/tellStory.ts';
import { openEngine } from '../../electron/service/openEngine.ts';
import { openTools } from '../../electron/service/openTools.ts';

/**
 * The whole job, told until it is killed, in the folder given on the command line. Says every command before it is
 * asked and again once it is acknowledged.
 */
const folder = process.argv[2];
if (!folder) throw new Error('No folder given');

const clock = storyClock(STORY.story.takenIn.begun, STORY.story.zone);
const opened = await openShop({
  folder,
  branch: 'main',
  clock: clock.now,
  wallet: fileWallet(`${folder}/wallet.key`),
  log: () => undefined,
});
if (isOpenRefusal(opened)) throw new Error(opened.refused);

const shop: OpenShop = {
  ...opened,
  runCommand: async (asked, decide) => {
    process.send?.({ asking: asked, now: clock.now() });
    const done = await opened.runCommand(asked, decide);
    if (done.ok) process.send?.({ done: asked.command, seq: done.seq, firstStream: done.firstStream });
    return done;
  },
};
const engine = openEngine();
const tools = openTools(engine, () => shop.lastSealedHead()?.short ?? null);
const text = readFileSync(fileURLToPath(new URL('../../assets/demo/own-report.txt', import.meta.url)), 'utf8');
const teller = openTeller({ shop, tools, engine, clock, zone: STORY.story.zone, print: () => undefined });
await tellStory(teller, originalStory(readText(text), text), () => shop.sealHeads());
process.send?.({ told: true });
await shop.close();
process.disconnect();
