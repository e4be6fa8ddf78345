import { fstatSync } from 'node:fs';
import { serveLoopback } from '../../stations/serveLoopback.ts';
import { cannotStartText } from '../../words/cannotStart.ts';
import { screensFolder } from '../screensFolder.ts';
import type { Host } from './host.ts';

/** Served to a browser on this computer; the address, with its one-time token, is printed as one line. */
export function loopbackHost(port: number): Host {
  let stop = () => Promise.resolve();
  return {
    serve: async ({ router }) => {
      try {
        const served = await serveLoopback({ router, port, screens: screensFolder() });
        stop = served.stop;
        process.stdout.write(`${served.address}\n`);
        return undefined;
      } catch (error) {
        if (!isTaken(error)) throw error;
        return { refused: 'port-not-free', path: `127.0.0.1:${port}` };
      }
    },
    refuse: (refusal) => void process.stderr.write(`${cannotStartText(refusal)}\n`),
    onEnd: (end) => {
      if (isPipe(0)) process.stdin.on('end', end).on('error', end).resume();
    },
    stop: () => stop(),
  };
}

/** A launcher holds the other end of a pipe; a terminal or an empty input says nothing about who started us. */
function isPipe(descriptor: number): boolean {
  try {
    const held = fstatSync(descriptor);
    return held.isFIFO() || held.isSocket();
  } catch {
    return false;
  }
}

function isTaken(error: unknown): boolean {
  return error instanceof Error && 'code' in error && (error.code === 'EADDRINUSE' || error.code === 'EACCES');
}
