import { ensureBuilt } from './ensureBuilt.mjs';
import { node24, toolEnv } from './node24.mjs';
import { oneAtATime } from './oneAtATime.mjs';
import { ensurePackages } from './packages.mjs';
import { SetUpError } from './SetUpError.mjs';

/** Set-up speaks on standard error only, so that a command's output can be piped on. */
export const say = (text) => process.stderr.write(`${text}\n`);

/**
 * Brings a fresh clone to where it runs: packages, Node 24 and, where asked, the build.
 * @returns `node`, the Node that runs everything, and `env`, the environment to start tools in.
 */
export async function setUp({ build }) {
  if (Number(process.versions.node.split('.')[0]) < 20) {
    throw new SetUpError(`Node 20 or newer is needed; this is ${process.version}.`);
  }
  return oneAtATime(say, async () => {
    await ensurePackages(say);
    const node = node24();
    if (build) await ensureBuilt(say);
    return { node, env: toolEnv(node) };
  });
}
