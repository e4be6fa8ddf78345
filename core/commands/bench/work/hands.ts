import type { View } from '../../../entries/view.ts';
import type { Job } from '../../../job/job.ts';
import { isUnderWay, type Phase, phaseOf, type Work } from '../../../job/work.ts';
import type { EpochMs } from '../../../time.ts';
import type { Asking } from '../../kernel/asking.ts';
import type { UnitOfWork } from '../../kernel/unitOfWork.ts';

/*
 * One person has one pair of hands: hands-on here pauses hands-on at the other machines this person works on. Off here,
 * they go back to the one that was so paused last, and to no other. What waits anywhere runs on. What stopped by itself (the
 * screen locked, the owner's word for it taken back) goes on by a press of its own alone.
 */

/** Takes the asker's hands off what they are on at other machines. */
export function takeHands(unit: UnitOfWork, asking: Asking, at: EpochMs): void {
  for (const { job, work } of elsewhere(unit.view(), asking, 'hands-on')) turn(unit, job, work, 'paused', at);
}

/** Gives the asker's hands back to what they were taken from last; they can be on one thing only. */
export function giveHandsBack(unit: UnitOfWork, asking: Asking, at: EpochMs): void {
  const paused = elsewhere(unit.view(), asking, 'paused').filter(({ work }) => phaseOf(work).because === undefined);
  const last = paused.toSorted((a, b) => phaseOf(b.work).at - phaseOf(a.work).at)[0];
  if (last) turn(unit, last.job, last.work, 'hands-on', at);
}

const elsewhere = ({ elsewhere: jobs }: View, { by }: Asking, phase: Phase) =>
  jobs.flatMap((job) =>
    job.work
      .filter((work) => work.by === by && isUnderWay(work) && phaseOf(work).to === phase)
      .map((work) => ({ job, work })),
  );

/** Never earlier than the turn before: work may be logged with a start that lies back. */
function turn(unit: UnitOfWork, job: Job, work: Work, to: Phase, at: EpochMs): void {
  const before = phaseOf(work).at;
  unit.add(`job:${job.id}`, 'work-turned', { run: work.run, to, at: at > before ? at : before });
}
