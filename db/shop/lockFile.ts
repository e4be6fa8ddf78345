import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { z } from 'zod';
import type { EpochMs } from '../../core/time.ts';
import { Refused } from './openRefusal.ts';

const zHolder = z.object({ pid: z.int().positive(), started: z.string().nullable(), host: z.string(), since: z.int() });
/** Who holds a shop's folder: process, when that process began (as the system counts), host, since when. */
export type Holder = z.infer<typeof zHolder>;

/**
 * Takes a folder for this process. A lock left by a process that is gone, or whose number another process has now, is
 * recognised as stale and taken over. The key file's own lock, which ends with its process, decides in the last
 * instance; this file tells a person who it is.
 * @throws {Refused} When a living process holds it.
 * @returns What was stale, and how to let go.
 */
export function takeLock(path: string, now: EpochMs): { readonly stale: Holder | null; readonly release: () => void } {
  const mine: Holder = { pid: process.pid, started: startOf(process.pid), host: hostname(), since: now };
  const found = readHolder(path);
  if (found && isAlive(found))
    throw new Refused({ refused: 'held-by-another', path, pid: found.pid, host: found.host, since: found.since });
  rmSync(path, { force: true });
  writeOnce(path, mine);
  return {
    stale: found,
    release: () => {
      const holder = readHolder(path);
      if (holder?.pid === mine.pid && holder.since === mine.since) rmSync(path, { force: true });
    },
  };
}

function writeOnce(path: string, mine: Holder): void {
  try {
    writeFileSync(path, JSON.stringify(mine), { flag: 'wx', mode: 0o600 });
  } catch (error) {
    if (codeOf(error) !== 'EEXIST') throw error;
    const quicker = readHolder(path);
    throw new Refused({
      refused: 'held-by-another',
      path,
      pid: quicker?.pid ?? null,
      host: quicker?.host ?? null,
      since: quicker?.since ?? null,
    });
  }
}

/** The system's name of an error; null for any other. */
const codeOf = (error: unknown) => (error instanceof Error && 'code' in error ? error.code : null);

/** Who holds a folder according to its lock file; null without one, or when it cannot be read. */
function readHolder(path: string): Holder | null {
  try {
    return zHolder.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    return null;
  }
}

function isAlive({ pid, started, host }: Holder): boolean {
  // Another host's processes cannot be asked about: whoever shares the folder must end the other service first.
  if (host !== hostname()) return true;
  // Our own number in a lock we did not take in this process's life is checked by the key file's lock.
  try {
    process.kill(pid, 0);
  } catch (error) {
    if (codeOf(error) === 'ESRCH') return false;
  }
  const now = startOf(pid);
  return started === null || now === null || now === started;
}

/** When a process began, in the kernel's own count since boot, with the boot's id; null where the system does not say (only Linux does). */
function startOf(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    // Field 22 of proc_pid_stat(5), counted after the command's name, which may hold spaces.
    return `${boot}/${stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19]}`;
  } catch {
    return null;
  }
}
