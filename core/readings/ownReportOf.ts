import type { OwnReport } from '../custody/machine.ts';
import type { MachineReport } from '../custody/machineReport.ts';

/** What is kept of a machine's own report, without serial numbers. */
export const ownReportOf = ({ memory, gaps, remarks: _, ...said }: MachineReport): OwnReport => ({
  ...said,
  memory: memory.slots,
  gaps: gaps.slice(0, MOST_GAPS).map((gap) => `${gap.about}: ${gap.why}`.slice(0, 300).toWellFormed()),
});

const MOST_GAPS = 500;
