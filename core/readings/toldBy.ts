import type { OwnReport } from '../custody/machine.ts';
import { type SlotsAndParts, slotsAndPartsFrom } from './slotsAndParts.ts';

/** The slots and parts that a kept report tells of, to be held against what is seen: a report is told, not seen. */
export const toldBy = ({ memory, ...report }: OwnReport): SlotsAndParts =>
  slotsAndPartsFrom({ ...report, memory: { slots: memory }, remarks: [], gaps: [] }, []);
