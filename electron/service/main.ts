import { askedFor } from './askedFor.ts';
import { keepSealed } from './lifetime.ts';
import { openBacking } from './openBacking.ts';
import { forkedHost } from './transport/forkedHost.ts';
import type { Host } from './transport/host.ts';
import { loopbackHost } from './transport/loopbackHost.ts';
import { tellDefect } from './transport/tellDefect.ts';
import { utilityHost } from './transport/utilityHost.ts';

/** Exit code for what the asker can put right: wrong arguments, data that cannot be opened. */
const ASKED_WRONGLY = 2;

/** Served by what is found: the app's utility process, a Node forked by it, or a browser's port. */
function hostFor(http: number | undefined): Host | undefined {
  if (http !== undefined) return loopbackHost(http);
  // Electron alone has it; in a plain Node it is not there at all.
  const parent: typeof process.parentPort | undefined = process.parentPort;
  if (parent) return utilityHost(parent);
  return process.send ? forkedHost(process) : undefined;
}

async function run(): Promise<void> {
  const asked = askedFor(process.argv.slice(2));
  const host = 'wrong' in asked ? undefined : hostFor(asked.http);
  if ('wrong' in asked || !host) {
    process.stderr.write(`${'wrong' in asked ? asked.wrong : 'Started by nobody: give --http 0 to serve a browser'}\n`);
    process.exit(ASKED_WRONGLY);
  }
  const opened = await openBacking({ data: asked.data });
  if (!opened.ok) {
    await host.refuse(opened.refusal);
    process.exit(ASKED_WRONGLY);
  }
  const { end } = keepSealed(opened.backing);
  let ending = false;
  const askedToEnd = () => {
    if (ending) return;
    ending = true;
    Promise.resolve(host.stop())
      .then(end)
      .then(() => process.exit(0))
      .catch((error: unknown) => {
        tellDefect('ending', error);
        process.exit(1);
      });
  };
  host.onEnd(askedToEnd);
  // In a terminal Ctrl+C reaches every process at once, this one too: it ends in order all the same.
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, askedToEnd);
  const refusal = await host.serve(opened.backing);
  if (!refusal) return;
  await host.refuse(refusal);
  await end();
  process.exit(ASKED_WRONGLY);
}

// A message no client of ours would send fails far from any caller; the shop goes on working.
process.on('unhandledRejection', (error) => tellDefect('a message', error));

run().catch((error: unknown) => {
  tellDefect('starting', error);
  process.exit(1);
});
