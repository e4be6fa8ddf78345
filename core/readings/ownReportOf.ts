import type { OwnReport } from '../custody/machine.ts';
import type { Said } from './said.ts';

/** What is kept of a machine's own report, without serial numbers. */
export const ownReportOf = (said: Said): OwnReport => ({
  system: said.system,
  board: said.board,
  firmware: said.firmware,
  processors: said.processors,
  memory: said.memory.slots.map(({ locator, sizeMiB, type, speedMTs }) => ({ locator, sizeMiB, type, speedMTs })),
  gaps: said.gaps.map((gap) => `${gap.about}: ${gap.why}`.slice(0, 300)),
});
