import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isOpenRefusal } from '../../../db/index.ts';
import { aShopFolder, edition, write } from '../../builders/shopFolder.ts';
import { type Attack, Tally } from '../attack.ts';
import { DISK_CALLS, runStraced } from '../straced.ts';

const SCRIPT = join(import.meta.dirname, '..', 'openOnce.ts');
/** Kills in the short form, spread over the whole first start. */
const SHORT_KILLS = 8;

/** One call of the first start that reaches the disk: its name and the how-many-th of that name it is in its thread. */
type Call = { readonly name: string; readonly nth: number };

/** Every call to the disk from the first that touches the shop's folder on, in order. */
async function callsOfFirstStart(): Promise<readonly Call[]> {
  const folder = mkdtempSync(join(tmpdir(), 'knowngood-first-'));
  const log = join(folder, 'calls');
  try {
    execFileSync(
      'strace',
      ['-f', '-qq', '-o', log, '-e', `trace=${DISK_CALLS}`, process.execPath, SCRIPT, join(folder, 'shop')],
      {
        stdio: 'ignore',
      },
    );
    const counts = new Map<string, number>();
    const calls: Call[] = [];
    let begun = false;
    for (const line of readFileSync(log, 'utf8').split('\n')) {
      const [, thread, name] = /^(\d+) +(\w+)\(/.exec(line) ?? [];
      if (!thread || !name) continue;
      const nth = (counts.get(`${thread} ${name}`) ?? 0) + 1;
      counts.set(`${thread} ${name}`, nth);
      begun ||= line.includes(join(folder, 'shop'));
      if (begun) calls.push({ name, nth });
    }
    return calls;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Starts again after a cut first start: a shop must open, empty, and take an entry; a wallet is whole or not there. */
async function opensAgain(folder: string): Promise<string | null> {
  const place = aShopFolder(folder);
  const wallet = place.walletPath;
  if (existsSync(wallet) && readFileSync(wallet).length !== 32) return 'half a wallet';
  const shop = await place.open();
  if (isOpenRefusal(shop)) return shop.refused;
  const done = await write(shop, edition());
  const { ok, entries } = await shop.verify();
  const { notices } = shop.standing();
  await shop.close();
  if (!done.ok) return done.refusal.refused;
  if (!ok || entries !== 1) return 'not whole';
  return notices.length > 0 ? notices.map(({ notice }) => notice).join(' ') : null;
}

const killed: Attack = {
  name: 'first start killed at a call',
  run: async ({ short }) => {
    const tally = new Tally();
    const calls = await callsOfFirstStart();
    const every = short ? calls.length / SHORT_KILLS : 1;
    for (let index = 0; index < calls.length; index += every) {
      const call = calls[Math.floor(index)];
      if (!call) break;
      const parent = mkdtempSync(join(tmpdir(), 'knowngood-first-'));
      const folder = join(parent, 'shop');
      try {
        await runStraced(SCRIPT, [folder], {
          trace: call.name,
          inject: `${call.name}:signal=SIGKILL:when=${call.nth}`,
        });
        const wrong = await opensAgain(folder);
        if (wrong === null) tally.survived('opens as new');
        else tally.lost(`${wrong} (${call.name} ${call.nth})`);
      } finally {
        rmSync(parent, { recursive: true, force: true });
      }
    }
    return tally.outcome();
  },
};

const full: Attack = {
  name: 'first start on a disk that fills',
  run: async ({ short }) => {
    const tally = new Tally();
    const sizes = short ? [8, 40, 120, 360, 520, 900] : Array.from({ length: 120 }, (_, index) => 4 + index * 8);
    for (const kib of sizes) {
      const disk = mkdtempSync(join(tmpdir(), 'knowngood-disk-'));
      execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${kib}k`, 'tmpfs', disk]);
      try {
        const first = await aShopFolder(join(disk, 'shop')).open();
        const said = isOpenRefusal(first) ? first.refused : 'opened';
        if (!isOpenRefusal(first)) await first.close();
        execFileSync('mount', ['-o', 'remount,size=8m', disk]);
        const wrong = await opensAgain(join(disk, 'shop'));
        if (wrong === null) tally.survived(said);
        else tally.lost(`${said}, then ${wrong} (${kib} KiB)`);
      } catch (error) {
        tally.lost(`${error instanceof Error ? error.message : 'thrown'} (${kib} KiB)`);
      } finally {
        execFileSync('umount', ['-l', disk]);
        rmSync(disk, { recursive: true, force: true });
      }
    }
    return tally.outcome();
  },
};

export const FIRST_START: readonly Attack[] = [killed, full];
