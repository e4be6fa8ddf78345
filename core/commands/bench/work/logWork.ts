import { AT_THE_BENCH } from '../../../stage.ts';
import { jobCommand } from '../../kernel/command.ts';
import { refuse } from '../../kernel/decision.ts';
import { inTurn } from '../../kernel/inTurn.ts';
import { decideFinish, zFinish } from './finishWork.ts';
import { decideStart, zStart } from './startWork.ts';
import { aboutWork } from './workUse.ts';

const zLog = zStart.extend(zFinish.omit({ run: true }).shape);

/**
 * Logs a piece of work that was done without its clock: started, ended, with its moves and what it unplugged, in one.
 * Refuses what starting or ending it would refuse; then nothing of it is written.
 */
export const logWork = jobCommand(
  'log-work',
  zLog,
  [...AT_THE_BENCH, 'ready'],
  (view, { kind, what, startedAt, ownWord, ...said }, asking) => {
    const { job, use, tray } = said;
    return inTurn(view, asking, [
      () => decideStart(view, { job, kind, what, startedAt, tray, use, ownWord }, asking),
      (now) => {
        const begun = now.job?.work.findLast((work) => work.by === asking.by && work.endedAt === null);
        return now.job && begun
          ? decideFinish({ ...now, job: now.job }, { ...said, run: begun.run }, asking)
          : refuse('no-such-work', { run: what });
      },
    ]);
  },
  aboutWork,
);
