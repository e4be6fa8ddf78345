import type { MachineReport } from '../../../core/custody/machineReport.ts';
import { STORY } from './story.ts';
import type { Story } from './tellStory.ts';

/** The story as it stands, on its own machine. */
export function originalStory(said: MachineReport, text: string): Story {
  const { story, machine, wall } = STORY;
  return {
    called: story.machine.called,
    report: { text, said, taken: story.reportTaken },
    found: machine,
    source: 'census',
    wall,
    firstPowerOn: story.firstPowerOn,
    tracing: story.tracing,
    evidence: story.confirmed.evidence,
    deadSlots: story.confirmed.deadSlots,
    uses: story.offer.uses,
    fitting: story.fitting.work,
    newSlots: story.fitting.newSlots,
    remarks: [],
  };
}
