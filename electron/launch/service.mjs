import { built } from './house.mjs';
import { startTool } from './runTool.mjs';
import { SetUpError } from './SetUpError.mjs';

const LIMIT_MS = 30_000;
const ADDRESS = /^.*?(http:\/\/(?:127\.0\.0\.1|localhost):\d+\/\S*)/m;

/**
 * Starts the service on a free loopback port.
 * @returns `address`, the page with its one-time token as the service printed it; `ended`, as for `startTool`; `stop`.
 *   The service watches its standard input and ends when it closes, so it cannot outlive a launcher that was killed.
 */
export async function startService({ node, env }, args) {
  const { child, ended } = startTool(node, [built.service, '--http', '0', ...args], {
    env,
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const stop = () => {
    child.stdin.end();
    child.kill('SIGTERM');
    return ended;
  };
  const address = await new Promise((resolve, reject) => {
    let printed = '';
    const limit = setTimeout(() => {
      void stop();
      reject(new SetUpError(`the service printed no address within ${LIMIT_MS / 1000} seconds.`));
    }, LIMIT_MS);
    child.stdout.setEncoding('utf8').on('data', (text) => {
      printed += text;
      const found = ADDRESS.exec(printed);
      // Only a whole line is an address: a chunk may end in the middle of the token.
      if (!found || !printed.slice(found.index).includes('\n')) return;
      clearTimeout(limit);
      child.stdout.removeAllListeners('data').resume();
      resolve(found[1]);
    });
    void ended.then(({ code }) => {
      clearTimeout(limit);
      reject(new SetUpError(`the service ended with code ${code}; what it says stands above.`));
    });
  });
  return { address, ended, stop };
}
