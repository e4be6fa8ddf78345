import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { epochMs } from '../../core/time.ts';
import { walletBeside } from '../../electron/service/dataFolder.ts';
import { KEPT_SHOPS } from '../oldShop/keptShops.ts';
import { copyKept, openAt } from '../oldShop/openKept.ts';
import { copyJobs } from './reads/copiedJobs.ts';
import { asked, row } from './reads/measure.ts';

/**
 * How long reads take in a shop that has closed many jobs: `npm run speed:reads -- [--jobs 300] [--open 12] [--times 5]
 * [--data DIR] [--rebuild]`. A kept shop's one job is copied through the write path, then everything is asked as screens
 * ask it, of a service that has just been opened: first answer, median and 95th percentile of the rest, in milliseconds.
 * `--data` keeps the shop there, and measures the one that is there.
 */
const { values } = parseArgs({
  options: {
    jobs: { type: 'string', default: '300' },
    open: { type: 'string', default: '12' },
    times: { type: 'string', default: '5' },
    data: { type: 'string' },
    rebuild: { type: 'boolean', default: false },
  },
});
const count = (name: 'jobs' | 'open' | 'times'): number => {
  const text = values[name];
  if (!/^\d{1,6}$/.test(text)) throw new RangeError(`--${name} ${text} is no count`);
  return Number(text);
};
const [kept] = KEPT_SHOPS;
if (!kept) throw new Error('There is no kept shop to copy');
const at = epochMs(kept.at);
const passing = values.data === undefined ? mkdtempSync(join(tmpdir(), 'knowngood-reads-')) : null;
const folder = values.data ?? passing ?? '';
const place = { data: join(folder, 'shop'), wallet: walletBeside(join(folder, 'shop')) };

if (!existsSync(place.data)) {
  const copy = copyKept(kept);
  mkdirSync(folder, { recursive: true });
  cpSync(copy.data, place.data, { recursive: true });
  cpSync(copy.wallet, place.wallet);
  copy.remove();
  const { shop, close } = await openAt(place, at);
  const started = performance.now();
  const all = { closed: count('jobs'), open: count('open') };
  await copyJobs(shop, all, (copies) => {
    if (copies % 100 === 0) console.log(`${copies} copies, ${Math.round((performance.now() - started) / 1000)} s`);
  });
  await close();
}

const opening = performance.now();
const { shop, asks, close } = await openAt(place, at);
const head = (await shop.read()).head;
console.log(`${head} entries; opened in ${Math.round(performance.now() - opening)} ms`);
console.log(`${''.padEnd(34)} ${['first', 'p50', 'p95'].map((name) => name.padStart(10)).join('')}`);
const times = count('times');
const say = async (name: string, ask: () => Promise<unknown>) => console.log(row(await asked(name, times, ask)));
await say('day line', () => asks.dayLine());
await say('orders', () => asks.orders());
await say('enquiries', () => asks.enquiries());
await say('kept', () => asks.kept());
await say('wall', () => asks.wall());
await say('what is out', () => asks.out());
const job = (await asks.dayLine()).points[0]?.job ?? '';
await say('job sheet', () => asks.job({ job }));
await say('night', () => asks.night());
await say('reckoning', () => asks.reckoning());
await say('a paper', () => asks.paper({ number: 'B-2026-0001' }));
await say('find a name that is nowhere', () => asks.find({ text: 'Quillfeather' }));
await say('find a paper number', () => asks.find({ text: 'B-2026-0001' }));
await say('books of all years', () => asks.bookkeeping({ from: null, to: null }));
globalThis.gc?.();
console.log(
  `resident ${Math.round(process.memoryUsage.rss() / 1e6)} MB, heap ${Math.round(process.memoryUsage().heapUsed / 1e6)} MB`,
);
if (values.rebuild) {
  const start = performance.now();
  const { entries } = await shop.rebuild();
  console.log(`rebuild ${Math.round(entries / ((performance.now() - start) / 1000))} entries/s`);
}
await close();
if (passing !== null) rmSync(passing, { recursive: true, force: true });
