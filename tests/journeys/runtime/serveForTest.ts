import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { serviceNode, serviceScript } from './house.ts';

export type ServedForTest = {
  /** The printed address, with its one-time token. */
  readonly address: string;
  readonly origin: string;
  readonly pid: number;
  /** Lets the service's input end, as a launcher that is gone does, and waits; gives its exit code. */
  readonly end: () => Promise<number | null>;
};

/**
 * Starts the built service on a free loopback port.
 * @param place The shop's data folder, and the folder for what the app keeps of its own.
 */
export async function serveForTest(place: { readonly data: string; readonly config: string }): Promise<ServedForTest> {
  const child = spawn(serviceNode, [serviceScript, '--http', '0', '--data', place.data], {
    stdio: ['pipe', 'pipe', 'inherit'],
    env: { ...process.env, XDG_CONFIG_HOME: place.config },
  });
  const exited = once(child, 'exit') as Promise<[number | null]>;
  const lines = createInterface({ input: child.stdout });
  const address = await Promise.race([
    once(lines, 'line').then(([line]) => String(line)),
    exited.then(([code]) => Promise.reject(new Error(`the service ended with code ${code}`))),
  ]);
  return {
    address,
    origin: new URL(address).origin,
    pid: child.pid ?? 0,
    end: async () => {
      child.stdin.end();
      const [code] = await exited;
      return code;
    },
  };
}
