import type { MachineReport } from '../custody/machineReport.ts';
import type { EpochMs } from '../time.ts';
import type { MachineReading } from './reading.ts';
import { readMachineReport } from './readMachineReport.ts';
import { remarksOf } from './remarks/remarksOf.ts';
import { ENGLISH, type ReadingWords } from './words.ts';

/**
 * What a machine says of itself, in the plain form that leaves out serial numbers and every other identifying value.
 * @param text What tools printed, one or several, with any line ends; already decoded.
 */
export const readText = (text: string, words: ReadingWords = ENGLISH): MachineReport =>
  saidOf(readMachineReport(text, words), words);

/**
 * The plain form of a reading: nothing in it names a single machine or part.
 * @param asOf The day it is read, for remarks on age; without it there are none.
 */
export function saidOf(
  reading: MachineReading,
  words: ReadingWords = ENGLISH,
  asOf: EpochMs | null = null,
): MachineReport {
  return {
    kinds: reading.tools,
    board: { vendor: reading.board.vendor, name: reading.board.name },
    system: { vendor: reading.system.vendor, name: reading.system.name },
    chassis: reading.chassis,
    firmware: reading.firmware,
    processors: reading.processors.map(({ name, socket, cores }) => ({ name, socket, cores })),
    memory: {
      slots: reading.slots.map(({ locator, bank, sizeMiB, type, speedMTs, configuredMTs, formFactor }) => ({
        locator,
        bank,
        sizeMiB,
        type,
        speedMTs,
        configuredMTs,
        formFactor,
      })),
    },
    cards: reading.cards,
    drives: reading.drives.map((drive) => ({
      model: drive.model,
      kind: drive.kind,
      health: drive.health,
      powerOnHours: drive.powerOnHours,
      reallocated: drive.reallocated,
      pending: drive.pending,
      uncorrectable: drive.uncorrectable,
      percentageUsed: drive.percentageUsed,
      mediaErrors: drive.mediaErrors,
    })),
    remarks: remarksOf(reading, words, asOf),
    gaps: reading.gaps,
  };
}
