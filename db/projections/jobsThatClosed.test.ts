import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { jobId } from '../../core/ids.ts';
import { closedFacts } from '../../core/job/bench/closedFacts.ts';
import type { Job } from '../../core/job/job.ts';
import type { Draft, Json } from '../../core/journal/entry.ts';
import { anyJobEntries } from '../../tests/builders/anyJobEntries.ts';
import { inBin, machineKnown, ownerKnown, partKnown, stageEntered, takenIn } from '../../tests/builders/shopEntries.ts';
import { aShopFolder, draft, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import type { OpenShop } from '../index.ts';
import { closedRows, closedSoFar } from '../reads/closed.ts';

let place: ShopFolder;
let shop: OpenShop;
beforeEach(async () => {
  place = aShopFolder();
  shop = await place.opened();
  await write(shop, ownerKnown('o1', { phone: null, mail: null }), machineKnown('m1'), machineKnown('m2'));
  await write(shop, partKnown('p1', inBin('B1')), partKnown('p2', inBin('B2')));
});
afterEach(async () => {
  await shop.close();
  place.remove();
});

const JOBS = ['j1', 'j2', 'j3'];
/** The same entries on jobs of another name. */
const onOthers = (entries: readonly Draft[], run: number): readonly Draft[] =>
  JSON.parse(JSON.stringify(entries).replaceAll(/\bj([123])\b/g, `j$1r${run}`));
/** As a read table holds it: without what is undefined, and without what is sealed. */
const asKept = (job: Job): Json => JSON.parse(JSON.stringify(closedFacts(job)));

/** What the histories say of jobs that went home, each folded from its first entry on. */
async function folded(names: readonly string[]) {
  const read = await shop.read();
  const jobs = await Promise.all(names.map((job) => read.load('job', job)));
  const closed = jobs.flatMap((job) => (job?.stage === 'gone-home' && !job.cancelled ? [job] : []));
  return Promise.all(
    closed
      .toSorted((a, b) => b.takenInAt - a.takenInAt || (a.id < b.id ? 1 : -1))
      .map(async (job) => ({
        job: job.id,
        takenIn: job.takenInAt,
        facts: asKept(job),
        switches: (await read.load('machine', job.machine))?.switches,
      })),
  );
}

describe('what is kept of closed jobs', { timeout: 60_000 }, () => {
  it('is what their histories say, whatever was written in whatever order, and the same made anew', async () => {
    const names: string[] = [];
    let run = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(anyJobEntries, { minLength: 1, maxLength: 20 }), async (commands) => {
        run += 1;
        names.push(...JOBS.map((job) => `${job}r${run}`));
        const taken = JOBS.map((job) => takenIn(job, { machine: job === 'j2' ? 'm2' : 'm1' }));
        const half = commands.length >> 1;
        // One at least goes home in the midst of it all.
        const inTurn = [taken, ...commands.slice(0, half), [stageEntered('j1', 'gone-home')], ...commands.slice(half)];
        for (const entries of inTurn) await write(shop, ...onOthers(entries, run));
        expect(await closedRows(await shop.read(), { limit: 999 })).toEqual(await folded(names));
        const kept = await shop.digests();
        await shop.rebuild();
        expect(await shop.digests()).toEqual(kept);
      }),
      { numRuns: 12 },
    );
    expect((await folded(names)).length).toBeGreaterThan(3);
  });

  it('is asked page by page, the newest first, each job once', async () => {
    for (const job of JOBS) await write(shop, takenIn(job), stageEntered(job, 'gone-home'));
    const read = await shop.read();
    const [last, middle, first, ...more] = await closedRows(read, { limit: 9 });
    if (!last || !middle || !first) throw new Error('Three went home');
    expect([last.job, middle.job, first.job, ...more]).toEqual(['j3', 'j2', 'j1'].map(jobId));
    expect(await closedRows(read, { limit: 1 })).toEqual([last]);
    expect(await closedRows(read, { limit: 1, before: last })).toEqual([middle]);
    expect(await closedRows(read, { limit: 9, before: middle })).toEqual([first]);
    expect(await closedRows(read, { limit: 9, before: first })).toEqual([]);
  });

  it('changes with what is written of a job after it went home, and with nothing of a job that is here', async () => {
    await write(shop, takenIn('j1'), takenIn('j2'), stageEntered('j1', 'gone-home'));
    const before = await closedSoFar(await shop.read());
    await write(shop, draft('job:j2', 'seen', { symptoms: ['dark'], differs: false }));
    expect(await closedSoFar(await shop.read())).toBe(before);
    await write(shop, draft('job:j1', 'seen', { symptoms: ['dark'], differs: false }));
    expect(await closedSoFar(await shop.read())).not.toBe(before);
  });
});
