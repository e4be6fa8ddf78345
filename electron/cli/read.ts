import type { MachineReport } from '../../core/custody/machineReport.ts';
import { readBytes } from '../../core/readings/readBytes.ts';
import { type MachineReading, NOTHING_READ } from '../../core/readings/reading.ts';
import { saidOf } from '../../core/readings/readText.ts';
import { shareForm } from '../../core/readings/share.ts';
import { ENGLISH } from '../../core/readings/words.ts';
import { fill } from '../../core/text/wordsFor.ts';
import { epochMs } from '../../core/time.ts';
import type { CliCommand } from './command.ts';

const words = ENGLISH.shown;

/** `knowngood read FILE… [--json|--share]`: what a machine says of itself, one line of JSON per file. */
export const read: CliCommand = {
  name: 'read',
  help: words.help,
  run: async (args, io) => {
    const stop = args.indexOf('--');
    const options = (stop < 0 ? args : args.slice(0, stop)).filter((arg) => arg.startsWith('--'));
    const files = args.filter((arg, index) => index !== stop && ((stop >= 0 && index > stop) || !arg.startsWith('--')));
    const strange = options.find((option) => option !== '--json' && option !== '--share');
    if (strange !== undefined || files.length === 0) {
      io.err(strange === undefined ? words.which : fill(words.unexpected, { option: strange }));
      return 2;
    }
    let code = 0;
    for (const file of files) {
      const reading = await readFile(file, io.readFile);
      const today = epochMs(Date.now());
      const said = saidOf(reading, ENGLISH, today);
      if (said.kinds.length === 0) code = 2;
      // The name of a file may name its owner.
      if (options.includes('--share')) io.out(JSON.stringify(shareForm(reading, ENGLISH, today)));
      else if (options.includes('--json')) io.out(JSON.stringify({ file, ...said }));
      else for (const line of inWords(file, said)) io.out(line);
    }
    return code;
  },
};

async function readFile(file: string, read: (path: string) => Promise<Uint8Array>): Promise<MachineReading> {
  try {
    return readBytes(await read(file));
  } catch (error) {
    return { ...NOTHING_READ, gaps: [{ about: 'file', why: whyUnreadable(error) }] };
  }
}

/** What a person can put right about a file that does not open. */
function whyUnreadable(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const why = ({ ENOENT: 'missing', EISDIR: 'folder', EACCES: 'forbidden', EPERM: 'forbidden' } as const)[code];
  return why
    ? ENGLISH.file[why]
    : fill(ENGLISH.file.unreadable, { why: error instanceof Error ? error.message : String(error) });
}

function inWords(file: string, said: MachineReport): readonly string[] {
  const name = (pair: MachineReport['board']) =>
    [pair.vendor, pair.name].filter((one) => one !== null).join(' ') || '?';
  const machine = name(said.board) !== '?' || name(said.system) !== '?';
  return [
    file,
    ...(machine
      ? [
          fill(words.board, {
            board: name(said.board),
            system: name(said.system),
            firmware: said.firmware.version ?? '?',
          }),
        ]
      : []),
    ...said.processors.map((one) =>
      fill(words.processor, { name: one.name ?? '?', socket: one.socket ?? '?', cores: one.cores ?? '?' }),
    ),
    ...said.memory.slots.map((slot, index) =>
      fill(slot.sizeMiB === null ? words['no-module'] : words.module, {
        locator: slot.locator ?? fill(words['unnamed-slot'], { n: index + 1 }),
        size: slot.sizeMiB ?? 0,
        type: slot.type ?? '?',
        speed: slot.speedMTs ?? '?',
      }),
    ),
    ...said.cards.map((card) => fill(words.card, card)),
    ...said.drives.map((drive) =>
      fill(words.drive, {
        model: drive.model ?? '?',
        kind: drive.kind ?? '?',
        health: drive.health ?? '?',
        hours: drive.powerOnHours ?? '?',
      }),
    ),
    ...said.remarks.map((remark) => fill(words.remark, remark)),
    ...said.gaps.map((gap) => fill(words.gap, gap)),
  ];
}
