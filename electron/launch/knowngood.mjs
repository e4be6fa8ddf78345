import { constants } from 'node:os';
import { inHouse, root } from './house.mjs';
import { runTool } from './runTool.mjs';
import { launch } from './SetUpError.mjs';
import { setUp } from './setUp.mjs';

/** Commands that show screens and so need the build; the others run from the sources. */
const NEED_SCREENS = new Set(['serve']);

const args = process.argv.slice(2);

/** Where relative paths among the arguments start: npm moves into the root, but remembers where it was called. */
function askedFrom() {
  const { npm_lifecycle_event: script, INIT_CWD: calledIn } = process.env;
  return calledIn && process.cwd() === root && ['demo', 'knowngood'].includes(script) ? calledIn : process.cwd();
}

await launch(async () => {
  const { node, env } = await setUp({ build: NEED_SCREENS.has(args[0]) && !args.includes('--help') });
  const { code, signal } = await runTool(node, [inHouse('electron', 'cli', 'main.ts'), ...args], {
    cwd: askedFrom(),
    env,
  });
  return signal ? 128 + (constants.signals[signal] ?? 0) : code;
});
