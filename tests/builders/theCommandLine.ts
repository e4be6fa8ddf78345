import { readFileSync } from 'node:fs';
import type { CliCommand } from '../../electron/cli/command.ts';

/** What a command of the command line printed, and the code it ended with. */
export type Said = { readonly code: number; readonly out: string; readonly err: string };

/** Asks one command as a terminal would, with lines on standard input where it reads them. */
export async function saidBy(
  command: CliCommand,
  args: readonly string[],
  typed: readonly string[] = [],
): Promise<Said> {
  const [out, err]: [string[], string[]] = [[], []];
  const code = await command.run(args, {
    out: (line) => void out.push(line),
    err: (line) => void err.push(line),
    readFile: async (file) => new Uint8Array(readFileSync(file)),
    lines: async function* () {
      yield* typed;
    },
  });
  return { code, out: out.join('\n'), err: err.join('\n') };
}
