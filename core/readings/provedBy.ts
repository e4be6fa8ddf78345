import type { SaidDrive } from '../custody/machineReport.ts';
import { compareDrives, type ReadDrive } from './compareDrives.ts';
import { type Proof, proofsOf, proofsOfChanges, proofsOfRuns } from './proofs.ts';
import { readMachineReport } from './readMachineReport.ts';
import { readRunFigures } from './runFigures.ts';
import { ENGLISH, type ReadingWords } from './words.ts';

/** Drives as a kept report named them, with the serial numbers that were kept of it. */
export const drivesBefore = (
  drives: readonly SaidDrive[],
  serials: readonly { readonly of: string; readonly serial: string }[],
): readonly ReadDrive[] =>
  drives.map((drive, index) => ({
    ...drive,
    serial: serials.find(({ of }) => of === `drives[${index}]`)?.serial ?? null,
  }));

export type Proved = {
  /** What is out of its limit first, then what is within one, then what has none. */
  readonly proofs: readonly Proof[];
  /** Why nothing was read; `null` when something was, or nothing was written. */
  readonly nothing: string | null;
};

/**
 * What a text typed or pasted at proving proves: what tools printed, held against limits and against the drives as they
 * were before; else the figures of a memory pass or a load run.
 */
export function provedBy(text: string, before: readonly ReadDrive[], words: ReadingWords = ENGLISH): Proved {
  if (text.trim() === '') return { proofs: [], nothing: null };
  const reading = readMachineReport(text, words);
  const changes = before.length > 0 && reading.drives.length > 0 ? compareDrives(before, reading.drives) : [];
  const runs = reading.tools.length > 0 ? [] : readRunFigures(text).filter(saysSomething);
  const proofs = [...proofsOfChanges(changes, words), ...proofsOf(reading, words), ...proofsOfRuns(runs, words)]
    .map(cutToLines)
    .sort((a, b) => order(a) - order(b));
  if (proofs.length > 0) return { proofs, nothing: null };
  const why = reading.tools.length > 0 ? words.gap['nothing-to-prove'] : (reading.gaps[0]?.why ?? null);
  return { proofs, nothing: why };
}

const saysSomething = (run: ReturnType<typeof readRunFigures>[number]): boolean =>
  [run.minutes, run.passes, run.errors, run.celsius].some((figure) => figure !== null);

const order = ({ within, limit }: Proof): number =>
  within === false ? 0 : within === true ? 1 : limit === null ? 3 : 2;

/** The journal takes lines of this length. */
const LINE = 300;
const cut = (text: string): string => text.slice(0, LINE).toWellFormed();
const cutToLines = (proof: Proof): Proof => ({
  ...proof,
  what: cut(proof.what),
  value: cut(proof.value),
  limit: proof.limit === null ? null : cut(proof.limit),
  source: proof.source === null ? null : cut(proof.source),
});
