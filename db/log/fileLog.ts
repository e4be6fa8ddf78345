import { appendFileSync, renameSync, statSync } from 'node:fs';
import type { EpochMs } from '../../core/time.ts';
import type { Log } from './log.ts';

/** Beyond this size the file is set aside once, the one set aside before is lost. */
const LARGEST_BYTES = 2_000_000;

/** A log in a file, one JSON object a line. A log that cannot be written stops nothing. */
export function fileLog(path: string, clock: () => EpochMs): Log {
  return (event, facts = {}) => {
    const plain = Object.entries(facts).map(([name, value]) => [
      name,
      typeof value === 'object' && value ? value.word : value,
    ]);
    const line = JSON.stringify({ at: new Date(clock()).toISOString(), event, ...Object.fromEntries(plain) });
    try {
      if ((statSync(path, { throwIfNoEntry: false })?.size ?? 0) > LARGEST_BYTES) renameSync(path, `${path}.1`);
      appendFileSync(path, `${line}\n`, { mode: 0o600 });
    } catch {
      return;
    }
  };
}
