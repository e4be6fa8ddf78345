import { spawn } from 'node:child_process';
import { root } from './house.mjs';

/** Signals by which a person or a system ends the launcher; whatever it started must end with it. */
const ENDINGS = ['SIGINT', 'SIGTERM', 'SIGHUP'];

/**
 * Starts a program (in the project's root unless `cwd` says otherwise) and ends it when this process ends.
 *
 * @param options `cwd`, `env`, `stdio`, `shell` as for spawn; `limitMs` ends the program after that many milliseconds.
 * @returns `child`, and `ended`: a promise of `{ code, signal, timedOut, failed }`. It never rejects: a program that
 *   could not be started has `failed` (the error) and code 127.
 */
export function startTool(
  command,
  args,
  { cwd = root, env = process.env, stdio = 'inherit', limitMs, shell = false } = {},
) {
  const child = spawn(command, args, { cwd, env, stdio, shell });
  const stop = () => child.kill('SIGTERM');
  for (const name of ENDINGS) process.on(name, stop);
  process.on('exit', stop);
  const ended = new Promise((resolve) => {
    let timedOut = false;
    const limit = limitMs
      ? setTimeout(() => {
          timedOut = true;
          child.kill('SIGKILL');
        }, limitMs)
      : undefined;
    const finish = (outcome) => {
      clearTimeout(limit);
      for (const name of ENDINGS) process.off(name, stop);
      process.off('exit', stop);
      resolve({ code: 127, signal: null, failed: undefined, ...outcome, timedOut });
    };
    child.once('error', (failed) => finish({ failed }));
    child.once('close', (code, signal) => finish({ code: code ?? 1, signal }));
  });
  return { child, ended };
}

/** Runs a program to its end; see `startTool`. */
export const runTool = (command, args, options) => startTool(command, args, options).ended;
