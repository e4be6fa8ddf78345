import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { root } from './house.mjs';
import { SetUpError } from './SetUpError.mjs';

const lock = join(tmpdir(), `knowngood-set-up-${createHash('sha256').update(root).digest('hex').slice(0, 16)}`);
const PATIENCE_MS = 10 * 60_000;

/** Whether the process that took the lock still lives. A lock just being taken has no number yet: that counts as alive. */
function holderLives() {
  let holder;
  try {
    holder = Number(readFileSync(join(lock, 'pid'), 'utf8'));
  } catch {
    return true;
  }
  try {
    process.kill(holder, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

/** Does the work while no other launcher of this folder sets up: two of them would wipe each other's files. */
export async function oneAtATime(say, work) {
  const since = Date.now();
  for (let told = false; ; told = true) {
    try {
      mkdirSync(lock);
      break;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
    }
    if (!holderLives()) rmSync(lock, { recursive: true, force: true });
    else if (Date.now() - since > PATIENCE_MS) {
      throw new SetUpError(`another set-up of this folder does not end. If none is running, delete ${lock}.`);
    } else {
      if (!told) say('Another set-up of this folder is running; waiting for it.');
      await wait(200);
    }
  }
  writeFileSync(join(lock, 'pid'), String(process.pid));
  try {
    return await work();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}
