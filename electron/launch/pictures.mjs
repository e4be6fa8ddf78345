import { constants } from 'node:os';
import { inHouse, root } from './house.mjs';
import { runTool } from './runTool.mjs';
import { launch } from './SetUpError.mjs';
import { setUp } from './setUp.mjs';

/** Where a relative `--out` starts: npm moves into the root, but remembers where it was called. */
const askedFrom = () => (process.cwd() === root && process.env.INIT_CWD) || process.cwd();

/** Takes pictures of every room and paper of the demo's job; they show the screens, so everything is built first. */
await launch(async () => {
  const { node, env } = await setUp({ build: true });
  const { code, signal } = await runTool(
    node,
    [inHouse('tests', 'pictures', 'takePictures.ts'), ...process.argv.slice(2)],
    { cwd: askedFrom(), env },
  );
  return signal ? 128 + (constants.signals[signal] ?? 0) : code;
});
