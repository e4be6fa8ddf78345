import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import { readBytes } from '../../core/readings/readBytes.ts';
import { NOTHING_READ } from '../../core/readings/reading.ts';
import { saidOf } from '../../core/readings/readText.ts';
import type { Said } from '../../core/readings/said.ts';
import { ENGLISH } from '../../core/readings/words.ts';
import { fill } from '../../core/wording/wordsFor.ts';
import type { CliCommand } from './command.ts';

/** `knowngood read FILE… --json`: what a machine says of itself, one line of JSON per file. */
export const read: CliCommand = {
  name: 'read',
  help: cliWords.read,
  run: async (args, io) => {
    const files = args.filter((arg) => arg !== '--json');
    const strange = files.find((arg) => arg.startsWith('--'));
    if (strange !== undefined || files.length === 0) {
      io.err(strange === undefined ? cliWords.readWhich : fill(cliWords.unexpected, { rest: strange }));
      return 2;
    }
    let code = 0;
    for (const file of files) {
      const said = await readFile(file, io.readFile);
      if (said.kinds.length === 0) code = 2;
      if (args.includes('--json')) io.out(JSON.stringify({ file, ...said }));
      else for (const line of inWords(file, said)) io.out(line);
    }
    return code;
  },
};

async function readFile(file: string, read: (path: string) => Promise<Uint8Array>): Promise<Said> {
  try {
    return saidOf(readBytes(await read(file)));
  } catch (error) {
    return { ...saidOf(NOTHING_READ), gaps: [{ about: 'file', why: whyUnreadable(error) }] };
  }
}

/** What a person can put right about a file that does not open. */
function whyUnreadable(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const why = ({ ENOENT: 'missing', EISDIR: 'folder', EACCES: 'forbidden', EPERM: 'forbidden' } as const)[code];
  return why
    ? ENGLISH.file[why]
    : fill(ENGLISH.file.unreadable, { why: error instanceof Error ? error.message : code });
}

function inWords(file: string, said: Said): readonly string[] {
  const name = (pair: { readonly vendor: string | null; readonly name: string | null }) =>
    [pair.vendor, pair.name].filter((one) => one !== null).join(' ') || '?';
  return [
    file,
    fill(cliWords.readBoard, {
      board: name(said.board),
      system: name(said.system),
      firmware: said.firmware.version ?? '?',
    }),
    ...said.processors.map((one) => fill(cliWords.readProcessor, { name: one.name ?? '?', socket: one.socket ?? '?' })),
    ...said.memory.slots.map((slot) =>
      fill(slot.sizeMiB === null ? cliWords.readEmpty : cliWords.readModule, {
        locator: slot.locator ?? '?',
        size: slot.sizeMiB ?? 0,
        type: slot.type ?? '?',
        speed: slot.speedMTs ?? '?',
      }),
    ),
    ...said.gaps.map((gap) => fill(cliWords.readGap, gap)),
  ];
}
