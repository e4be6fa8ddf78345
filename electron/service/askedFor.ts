import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { defaultDataFolder } from './dataFolder.ts';

export type AskedFor = {
  readonly data: string;
  /** The loopback port to serve browsers on, 0 for any free one; absent when a window asks. */
  readonly http?: number;
};

/** What was asked for on the service's command line, or a sentence that names the argument that is wrong. */
export function askedFor(args: readonly string[]): AskedFor | { readonly wrong: string } {
  let values: { data?: string | undefined; http?: string | undefined };
  try {
    const options = { data: { type: 'string' }, http: { type: 'string' } } as const;
    values = parseArgs({ args: [...args], options, strict: true, allowPositionals: false }).values;
  } catch (error) {
    return { wrong: error instanceof Error ? error.message : String(error) };
  }
  if (values.data === '' || values.data?.includes('\0')) return { wrong: '--data must name a folder' };
  const data = values.data === undefined ? defaultDataFolder() : resolve(values.data);
  if (values.http === undefined) return { data };
  const http = Number(values.http);
  const isPort = /^\d+$/.test(values.http) && http <= 65_535;
  return isPort ? { data, http } : { wrong: `--http must be a port from 0 to 65535, not "${values.http}"` };
}
