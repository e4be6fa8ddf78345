import { z } from 'zod';
import type { Shaped } from '../shape.ts';
/** A value that could not be read, and why: a gap, never a guess. */
export type ReportGap = { readonly about: string; readonly why: string };
/** What a reading gives reason to say, with the source of that reason. */
export type Remark = { readonly about: string; readonly says: string; readonly why: string; readonly source: string };

/** A figure or text of a report; null: not said. */
const saidShape = z.string().nullable();
const countedShape = z.number().nullable();
const vendorAndNameShape = z.strictObject({ vendor: saidShape, name: saidShape });

export const saidMemorySlotShape = z.strictObject({
  locator: saidShape,
  bank: saidShape,
  /** null: empty, or not said (then it stands in `gaps`). */
  sizeMiB: countedShape,
  type: saidShape,
  speedMTs: countedShape,
  configuredMTs: countedShape,
  formFactor: saidShape,
});
export type SaidMemorySlot = Shaped<typeof saidMemorySlotShape>;

export const saidDriveShape = z.strictObject({
  model: saidShape,
  kind: saidShape,
  health: z.enum(['passed', 'failed']).nullable(),
  powerOnHours: countedShape,
  reallocated: countedShape,
  pending: countedShape,
  uncorrectable: countedShape,
  percentageUsed: countedShape,
  mediaErrors: countedShape,
});
export type SaidDrive = Shaped<typeof saidDriveShape>;

/** What a machine's own reports said of it, without serial numbers: as it is kept. */
export const ownReportShape = z.strictObject({
  kinds: z.array(z.string()),
  system: vendorAndNameShape,
  board: vendorAndNameShape,
  chassis: saidShape,
  firmware: z.strictObject({ vendor: saidShape, version: saidShape, date: saidShape }),
  processors: z.array(z.strictObject({ name: saidShape, socket: saidShape, cores: countedShape })),
  cards: z.array(z.strictObject({ kind: z.string(), name: z.string() })),
  drives: z.array(saidDriveShape),
  memory: z.array(saidMemorySlotShape),
  gaps: z.array(z.string()),
});
export type OwnReport = Shaped<typeof ownReportShape>;

/** What a machine says of itself, read from the output of general-purpose system tools. */
export type MachineReport = Pick<
  OwnReport,
  'kinds' | 'board' | 'system' | 'chassis' | 'firmware' | 'processors' | 'cards' | 'drives'
> & {
  readonly memory: { readonly slots: OwnReport['memory'] };
  readonly remarks: readonly Remark[];
  readonly gaps: readonly ReportGap[];
};

/** A card slot as the machine's own report names it. */
export type SaidCardSlot = {
  readonly designation: string;
  readonly type: string;
  readonly usage: 'in-use' | 'available' | 'unknown';
};
