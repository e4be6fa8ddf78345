import { z } from 'zod';
import { personal } from '../../journal/personal.ts';
import { MOST_REPORT_CHARACTERS } from '../../readings/decode.ts';
import { ownReportOf } from '../../readings/ownReportOf.ts';
import { readMachineReport as readWhole } from '../../readings/readMachineReport.ts';
import { saidOf } from '../../readings/readText.ts';
import { identifiersOf } from '../../readings/share.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zJobId, zLine } from '../kernel/fields.ts';

export const zReport = z.strictObject({
  text: z.string().min(1).max(MOST_REPORT_CHARACTERS),
  taken: zLine.nullable(),
  keepSerials: z.boolean(),
});

/**
 * Keeps what a machine said of itself, or said in an old copy: that is told, not seen, until the census says so. The
 * whole text and the serial numbers in it are kept, sealed, only when the owner agrees. Refuses what no tool printed.
 */
export const readReport = jobCommand(
  'read-report',
  zReport.extend({ job: zJobId }),
  OPEN_STAGES,
  (view, { taken, text, keepSerials }, { sha256 }) => {
    const reading = readWhole(text);
    if (reading.tools.length === 0) return refuse('nothing-read', { why: reading.gaps[0]?.why ?? '' });
    const { owner, machine } = view.job;
    const kept = <Value>(value: Value) => (keepSerials ? personal('readings', owner, value) : null);
    const body = {
      report: ownReportOf(saidOf(reading)),
      taken,
      digest: sha256(text),
      text: kept(text),
      serials: kept(identifiersOf(reading)),
    };
    return accept({ stream: `machine:${machine}`, kind: 'own-report-read', body });
  },
);
