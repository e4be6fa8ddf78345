import { fork } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { CommandRequest as AskedByName } from '../../core/commands/asked.ts';
import { type EpochMs, epochMs } from '../../core/time.ts';
import type { OpenShop } from '../../db/index.ts';
import type { AskedCommand } from '../../db/shop/shop.ts';
import { carryOut } from '../../electron/service/desk/carryOut.ts';
import { openEngine } from '../../electron/service/openEngine.ts';
import { openTools } from '../../electron/service/openTools.ts';
import { aShopFolder, type ShopFolder } from '../builders/shopFolder.ts';

/** How often the job is cut short: 3 by default, 30 for the whole proof (`KNOWNGOOD_LONG=1`), or as many as asked for. */
const CRASHES = Number(process.env.KNOWNGOOD_CRASHES ?? (process.env.KNOWNGOOD_LONG ? 30 : 3));
/** The job has about this many commands; a kill drawn beyond its end is drawn again. */
const ABOUT_COMMANDS = 100;
/** A kill comes up to this long after the command it was drawn for, milliseconds: in the middle of the next. */
const LATER_MS = 40;

type Asking = { readonly asking: AskedCommand; readonly now: EpochMs };
type Acknowledged = { readonly done: string; readonly seq: number; readonly firstStream: string };
type Said = Asking | Acknowledged | { readonly told: true };
type Life = { readonly asked: readonly Asking[]; readonly acknowledged: readonly Acknowledged[] };

/** Tells the job in a folder and kills the process at a random moment; null when the job came to its end first. */
function tellAndDie(folder: string): Promise<Life | null> {
  const killAfter = Math.floor(Math.random() * ABOUT_COMMANDS);
  return new Promise((resolve, reject) => {
    const asked: Asking[] = [];
    const acknowledged: Acknowledged[] = [];
    const service = fork(join(import.meta.dirname, 'crashStoryBench.ts'), [folder], {
      execArgv: [],
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    });
    service.on('message', (said: Said) => {
      if ('asking' in said) asked.push(said);
      if ('done' in said) acknowledged.push(said);
      if ('asking' in said && asked.length === killAfter + 1)
        setTimeout(() => service.kill('SIGKILL'), Math.random() * LATER_MS);
    });
    service.on('error', reject);
    service.on('exit', (code, signal) => {
      if (signal === 'SIGKILL') resolve({ asked, acknowledged });
      else if (code === 0) resolve(null);
      else reject(new Error(`The service ended by itself (${code})`));
    });
  });
}

/** Asks a command again, exactly as it was asked. */
function askAgain(shop: OpenShop, place: ShopFolder, { asking, now }: Asking) {
  place.clock.now = epochMs(Math.max(place.clock.now, now));
  const tools = openTools(openEngine(), () => shop.lastSealedHead()?.short ?? null);
  const { name, input } = asking.asked as { readonly name: string; readonly input: unknown };
  return carryOut(shop, tools, asking.device, {
    command: asking.command,
    by: asking.by,
    name,
    input,
  } as unknown as AskedByName);
}

async function checkAfter(shop: OpenShop, place: ShopFolder, { asked, acknowledged }: Life): Promise<void> {
  expect(await shop.verify()).toMatchObject({ ok: true, findings: [] });
  const kept = await shop.digests();
  await shop.rebuild();
  expect(await shop.digests()).toEqual(kept);
  // Every acknowledged command is there: asked again it gives its first answer.
  const byCommand = new Map(asked.map((one) => [one.asking.command as string, one]));
  const { head } = await shop.read();
  for (const { done, seq, firstStream } of acknowledged) {
    const again = byCommand.get(done);
    if (again) expect(await askAgain(shop, place, again)).toEqual({ ok: true, seq, firstStream, replayed: true });
  }
  expect((await shop.read()).head).toBe(head);
  // The one that was under way was written whole or not at all: asked again, it is done once.
  const known = new Set(acknowledged.map(({ done }) => done));
  for (const one of asked.filter(({ asking }) => !known.has(asking.command))) {
    expect(await askAgain(shop, place, one)).toMatchObject({ ok: true });
  }
  expect(await shop.verify()).toMatchObject({ ok: true, findings: [] });
}

describe('a whole job whose service is killed at a random moment', () => {
  it(
    `keeps every acknowledged command, and goes on where it stopped, ${CRASHES} times`,
    async () => {
      let acknowledged = 0;
      for (let crash = 0; crash < CRASHES; ) {
        const place = aShopFolder();
        const life = await tellAndDie(place.folder);
        if (life) {
          crash += 1;
          acknowledged += life.acknowledged.length;
          const shop = await place.opened();
          await checkAfter(shop, place, life);
          await shop.close();
        }
        place.remove();
      }
      console.log(`${CRASHES} jobs killed, ${acknowledged} commands acknowledged, none lost`);
    },
    CRASHES * 60_000,
  );
});
