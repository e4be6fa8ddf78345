import { spawn } from 'node:child_process';
import { root } from './house.mjs';

/** Signals by which a person or a system ends the launcher; whatever it started must end with it. */
const ENDINGS = ['SIGINT', 'SIGTERM', 'SIGHUP'];

/** Ends a program; with `group`, everything it started as well. */
function finish(child, group, signal) {
  if (!group || child.pid === undefined) return child.kill(signal);
  try {
    return process.kill(-child.pid, signal);
  } catch {
    return false; // the group has ended already
  }
}

/**
 * Starts a program and ends it when this process ends.
 *
 * @param options `cwd` (the project's root by default), `env`, `stdio`, `shell` as for spawn; `limitMs` ends the
 *   program after that many milliseconds; `group` makes its own children end with it (not on Windows).
 * @returns `child`, and `ended`: a promise of `{ code, signal, timedOut, failed }`. It never rejects: a program that
 *   could not be started has `failed` (the error) and code 127.
 */
export function startTool(command, args, options = {}) {
  const { cwd = root, env = process.env, stdio = 'inherit', shell = false, limitMs } = options;
  const group = Boolean(options.group) && process.platform !== 'win32';
  const child = spawn(command, args, { cwd, env, stdio, shell, detached: group });
  const stop = () => finish(child, group, 'SIGTERM');
  for (const name of ENDINGS) process.on(name, stop);
  process.on('exit', stop);
  const ended = new Promise((resolve) => {
    let timedOut = false;
    const atLimit = () => {
      timedOut = true;
      finish(child, group, 'SIGKILL');
    };
    const limit = limitMs ? setTimeout(atLimit, limitMs) : undefined;
    const settle = (outcome) => {
      clearTimeout(limit);
      for (const name of ENDINGS) process.off(name, stop);
      process.off('exit', stop);
      resolve({ code: 127, signal: null, failed: undefined, ...outcome, timedOut });
    };
    child.once('error', (failed) => settle({ failed }));
    child.once('close', (code, signal) => settle({ code: code ?? 1, signal }));
  });
  return { child, ended };
}

/** Runs a program to its end; see `startTool`. */
export const runTool = (command, args, options) => startTool(command, args, options).ended;
