import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { epochMs } from '../../../core/time.ts';
import { isOpenRefusal } from '../../../db/index.ts';
import { aShopFolder, edition, write } from '../../builders/shopFolder.ts';
import { type Attack, Tally } from '../attack.ts';
import { runStraced } from '../straced.ts';

const SCRIPT = join(import.meta.dirname, '..', 'openOnce.ts');
const COMMANDS = 12;

/** What a run acknowledged last, by its own words. */
const acknowledged = (out: string): number =>
  Math.max(0, ...[...out.matchAll(/^done (\d+)$/gm)].map(([, seq]) => Number(seq)));
const refusals = (out: string): readonly string[] =>
  [...out.matchAll(/^refused (\S+)$/gm)].map(([, name]) => String(name));

/** Lets calls to the disk fail, or the process end, in the middle of work; then looks for what was acknowledged. */
const injected = (name: string, call: string, how: string, at: (short: boolean) => readonly number[]): Attack => ({
  name,
  run: async ({ short }) => {
    const tally = new Tally();
    for (const nth of at(short)) {
      const place = aShopFolder();
      try {
        await (await place.opened()).close();
        const { out } = await runStraced(SCRIPT, [place.folder, String(COMMANDS)], {
          trace: call,
          inject: `${call}:${how}:when=${nth}`,
        });
        const stack = /^\s+at .+:\d+:\d+/m.test(out) && !out.includes('closed');
        const shop = await place.opened();
        const { ok, entries } = await shop.verify();
        await shop.close();
        const said = [...new Set(refusals(out))].join(' ') || (out.includes('closed') ? 'nothing failed' : 'ended');
        if (ok && entries >= acknowledged(out) && !(stack && how.startsWith('error'))) tally.survived(said);
        else tally.lost(`${said}: ${entries} of ${acknowledged(out)} (${call} ${nth})`);
      } finally {
        place.remove();
      }
    }
    return tally.outcome();
  },
});

const fullAtWork: Attack = {
  name: 'disk full at work',
  run: async () => {
    const tally = new Tally();
    const disk = mkdtempSync(join(tmpdir(), 'knowngood-disk-'));
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', disk]);
    try {
      const place = aShopFolder(join(disk, 'shop'));
      const shop = await place.opened();
      let written = 0;
      let said: string | null = null;
      while (said === null) {
        const done = await write(shop, edition('x'.repeat(20_000)));
        if (done.ok) written += 1;
        else said = done.refusal.refused;
      }
      await shop.close();
      const again = await place.open();
      const entries = isOpenRefusal(again) ? -1 : (await again.verify()).entries;
      if (!isOpenRefusal(again)) await again.close();
      if (entries === written) tally.survived(said);
      else tally.lost(`${said}: ${entries} of ${written}`);
    } finally {
      execFileSync('umount', ['-l', disk]);
      rmSync(disk, { recursive: true, force: true });
    }
    return tally.outcome();
  },
};

const YEARS = 10 * 365 * 24 * 3_600_000;

const clockWrong: Attack = {
  name: 'clock ahead or back by years, then right',
  run: async () => {
    const tally = new Tally();
    for (const off of [YEARS, -YEARS]) {
      const place = aShopFolder();
      const right = place.clock.now;
      const said = new Set<string>();
      for (const now of [right, right + off, right]) {
        place.clock.now = epochMs(now);
        const shop = await place.opened();
        await write(shop, edition('at work'));
        for (const { notice } of shop.standing().notices) said.add(notice);
        await shop.close();
      }
      const again = await place.opened();
      const dates = (await (await again.read()).entries('shop')).map(({ at }) => at as number);
      const { ok } = await again.verify();
      await again.close();
      place.remove();
      const words = [...said].join(' ') || 'nothing';
      if (ok && dates.join() === [right, right + off, right].join() && said.size > 0) tally.survived(words);
      else tally.lost(`${words}: ${dates.join(' ')}`);
    }
    return tally.outcome();
  },
};

const count = (from: number, to: number, step: number) =>
  Array.from({ length: Math.ceil((to - from) / step) }, (_, index) => from + index * step);

export const AT_WORK: readonly Attack[] = [
  injected('a write to the disk fails', 'pwrite64', 'error=EIO', (short) => (short ? [30] : count(5, 120, 3))),
  injected('a sync of the disk fails', 'fsync,fdatasync', 'error=EIO', (short) => (short ? [6] : count(1, 40, 1))),
  injected('killed at a write', 'pwrite64', 'signal=SIGKILL', (short) => (short ? [25, 41] : count(5, 160, 2))),
  fullAtWork,
  clockWrong,
];
