import { inHouse } from './house.mjs';
import { node24, toolEnv } from './node24.mjs';
import { runTool } from './runTool.mjs';
import { launch } from './SetUpError.mjs';

/** Builds everything into `dist`: the service, the main process, the preload, the page, and what they are made of. */
const STEPS = [
  [
    'rolldown',
    inHouse('node_modules', 'rolldown', 'bin', 'cli.mjs'),
    ['-c', 'rolldown.config.ts', '--logLevel', 'warn'],
  ],
  ['vite', inHouse('node_modules', 'vite', 'bin', 'vite.js'), ['build', '--logLevel', 'warn']],
  ['what ships', inHouse('electron', 'shipped', 'main.ts'), []],
];

await launch(async () => {
  const node = node24();
  for (const [name, tool, args] of STEPS) {
    const { code } = await runTool(node, [tool, ...args], { env: toolEnv(node) });
    if (code !== 0) {
      process.stderr.write(`${name} ended with code ${code}\n`);
      return code;
    }
  }
  return 0;
});
