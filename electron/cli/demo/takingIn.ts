import { fromWall } from '../../../core/calendar.ts';
import type { MachineReport } from '../../../core/custody/machineReport.ts';
import { idOf } from '../../../core/entries/subjects.ts';
import { line, momentName, storyAmount } from './lines.ts';
import { drawnSignature } from './signature.ts';
import { STORY } from './story.ts';
import type { Teller } from './teller.ts';

/** The report that came with the machine, or by mail. */
export type CameReport = { readonly text: string; readonly said: MachineReport; readonly taken: string };

/** Tuesday at the counter: the sheet, the signature, what the machine once said of itself. */
export async function takingIn(teller: Teller, report: CameReport, called: string): Promise<void> {
  const { shop, story } = STORY;
  const { takenIn, owner } = story;
  const desk = takenIn.desk;
  teller.clock.set(takenIn.firstTier);
  const done = await teller.ask(desk, 'takeIn', {
    owner: { fresh: owner },
    machine: { fresh: { called, tag: story.tag, serial: story.machine.serial } },
    enquiry: null,
    cameBack: null,
    tasks: null,
    charging: 'charged',
    told: story.told,
    cameAlong: story.cameAlong,
    lift: 'one',
    limitMinor: story.limitMinor,
    smallPartsUpToMinor: story.smallPartsUpToMinor,
    deadline: fromWall(story.deadline, story.zone),
    substitution: { used: true, lesser: 'ask' },
    recording: false,
  });
  teller.setJob(idOf('job', done.firstStream));
  teller.say(line('taken-in', { by: shop.staff.find(({ id }) => id === desk)?.name, words: story.told.ownWords }));
  await sayEstimate(teller);
  const promised = fromWall(story.promise, story.zone);
  await teller.forJob(desk, 'promise', { at: promised, p90: promised, told: true });
  await teller.forJob(desk, 'addBeforeFirstScrew', story.before);
  teller.clock.set(takenIn.signed);
  const signed = { name: owner.name, drawn: drawnSignature, contentHash: null };
  await teller.forJob(desk, 'signSheet', { answers: story.answers, signed });
  await teller.forJob(desk, 'signAlone', {
    id: 'risk',
    answer: 'yes',
    about: story.risk.about,
    signed,
  });
  teller.say(line('signed'));
  teller.clock.set(takenIn.report);
  await teller.forJob(desk, 'readReport', {
    text: report.text,
    taken: report.taken,
    keepSerials: false,
  });
  const filled = report.said.memory.slots.filter((slot) => slot.sizeMiB !== null).map((slot) => slot.locator ?? '?');
  teller.say(line('own-report', { taken: report.taken, slots: filled.length > 0 ? filled : line('no-slot') }));
}

/** Prints the newest estimate. */
export async function sayEstimate(teller: Teller): Promise<void> {
  const { job } = await teller.sheet();
  const estimate = job.estimates.at(-1);
  if (!estimate) return;
  const { handsOn, price, passesLimit } = estimate;
  const [p10, p50, p90] = [handsOn.p10, handsOn.p50, handsOn.p90].map(Math.round);
  const [low, high] = [price.p50, price.p90].map(storyAmount);
  const chance = Math.round(passesLimit * 100);
  teller.say(line('estimate', { moment: momentName(estimate.moment), p10, p50, p90, low, high, chance }));
}
