import { fork } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BlobName } from '../../db/blobs/blobName.ts';
import type { OpenShop } from '../../db/index.ts';
import { accept, aShopFolder, asked, learntNothing, type ShopFolder } from '../builders/shopFolder.ts';
import { BEGINNINGS } from './crashStreams.ts';

/** How often the service is killed: 5 by default, 30 for the whole proof (`KNOWNGOOD_LONG=1`), or as many as asked for. */
const CRASHES = Number(process.env.KNOWNGOOD_CRASHES ?? (process.env.KNOWNGOOD_LONG ? 30 : 5));
/** A service is killed after at most so many acknowledged commands, and at most so many milliseconds after the last of them. */
const MOST_COMMANDS = 60;
const LONGEST_AFTER_MS = 20;

type Acknowledged = {
  readonly done: string;
  readonly seq: number;
  readonly bench: number;
  readonly turn: number;
  readonly owner: string;
  readonly blob: BlobName | null;
};
type Said = { readonly open: true } | Acknowledged;

let place: ShopFolder;
beforeAll(() => {
  place = aShopFolder();
});
afterAll(() => place.remove());

/**
 * Lets a service work and kills it at a random moment: sometimes while it opens, mostly while it writes.
 * @returns What it had acknowledged.
 */
function liveAndDie(): Promise<readonly Acknowledged[]> {
  return new Promise((resolve, reject) => {
    const acknowledged: Acknowledged[] = [];
    const bench = fork(join(import.meta.dirname, 'crashBench.ts'), [place.folder], {
      execArgv: [],
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    });
    const kill = () => bench.kill('SIGKILL');
    if (Math.random() < 0.1) setTimeout(kill, Math.random() * 300);
    const enough = Math.floor(Math.random() * MOST_COMMANDS);
    bench.on('message', (said: Said) => {
      if ('done' in said) acknowledged.push(said);
      if (acknowledged.length === enough) setTimeout(kill, Math.random() * LONGEST_AFTER_MS);
    });
    bench.on('error', reject);
    bench.on('exit', (code, signal) => {
      if (signal === 'SIGKILL') resolve(acknowledged);
      else reject(new Error(`The service ended by itself (${code})`));
    });
  });
}

async function checkAfter(shop: OpenShop, acknowledged: readonly Acknowledged[]): Promise<void> {
  const verdict = await shop.verify();
  expect(verdict).toMatchObject({ ok: true, findings: [] });
  const read = await shop.read();
  const written = new Set(
    (await read.entries('shop')).map((entry) => entry.kind === 'model-gone-back' && entry.body.from),
  );
  for (const { done } of acknowledged) expect(written).toContain(done);
  // After the beginnings every command writes three entries: none was written by halves.
  expect(verdict.entries).toBe(BEGINNINGS.length + written.size * 3);
  for (const { done, seq, bench, turn, owner, blob } of acknowledged.slice(-5)) {
    const again = await shop.runCommand(asked({ command: done, asked: { bench, turn } }), () => accept(learntNothing));
    expect(again).toEqual({ ok: true, seq, firstStream: `job:${bench}`, replayed: true });
    const met = (await read.entries(`owner:${owner}`)).find(({ command }) => command === done);
    expect(met?.body).toMatchObject({ name: { value: `Wilhelmina ${turn}` } });
    if (blob) expect(Buffer.from((await shop.blobs.get(blob)) as Uint8Array).toString()).toMatch(/^photograph/);
  }
}

describe('a service killed at random moments', () => {
  it(
    `loses nothing it acknowledged and writes nothing by halves, ${CRASHES} times`,
    async () => {
      let acknowledged = 0;
      for (let crash = 0; crash < CRASHES; crash++) {
        const life = await liveAndDie();
        acknowledged += life.length;
        const shop = await place.opened();
        await checkAfter(shop, life);
        const before = await shop.digests();
        if (crash === CRASHES - 1)
          expect((await shop.rebuild()).tables.map(({ name, after }) => [name, after])).toEqual(Object.entries(before));
        await shop.close();
      }
      expect(acknowledged).toBeGreaterThan(CRASHES);
      console.log(`${CRASHES} kills, ${acknowledged} commands acknowledged, none lost`);
    },
    CRASHES * 15_000,
  );
});
