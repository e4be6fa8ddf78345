import { readFile } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import type { Io } from './command.ts';
import { COMMAND_LIST } from './commands.ts';
import { steadyLine } from './steadyLine.ts';

/** Exit code for what the asker can put right. */
const ASKED_WRONGLY = 2;

const io: Io = {
  out: (line) => void process.stdout.write(`${steadyLine(line)}\n`),
  err: (line) => void process.stderr.write(`${steadyLine(line)}\n`),
  readFile: async (path) => new Uint8Array(await readFile(path)),
  lines: () => createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY }),
};

function usage(): string {
  const width = Math.max(...COMMAND_LIST.map((command) => command.name.length));
  return [
    cliWords.usage,
    ...COMMAND_LIST.map((command) => `  ${command.name.padEnd(width)}  ${command.help.split('\n')[0]}`),
  ].join('\n');
}

async function run([name, ...args]: readonly string[]): Promise<number> {
  if (name === undefined || name === '--help' || name === 'help') {
    io.out(usage());
    return name === undefined ? ASKED_WRONGLY : 0;
  }
  const command = COMMAND_LIST.find((one) => one.name === name);
  if (!command) {
    io.err(`${cliWords.noSuchCommand.replace('{name}', name)}\n${usage()}`);
    return ASKED_WRONGLY;
  }
  if (args.includes('--help')) {
    io.out(command.help);
    return 0;
  }
  return command.run(args, io);
}

process.exitCode = await run(process.argv.slice(2));
