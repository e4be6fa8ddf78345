import { z } from 'zod';
import { DIFFERENCES } from '../../job/entries.ts';
import { canGoHome } from '../../job/home/canGoHome.ts';
import { isProved, notHeld } from '../../job/home/proofs.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zJobId, zText } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';

export const zDifference = z.strictObject({
  what: z.enum(DIFFERENCES),
  says: zText.nullable(),
});

/** Proved, cleaned, closed: the machine stands ready. Refused while something of ours is in it or something of theirs is missing. */
export const markReady = jobCommand(
  'mark-ready',
  z.strictObject({ job: zJobId }),
  ['proving'],
  (view, _input, asking) => {
    const { job, machine } = view;
    if (!machine) return refuse('no-such-machine', { machine: job.machine });
    const failed = notHeld(job);
    if (failed.length > 0) return refuse('proof-failed', { proofs: failed });
    if (!isProved(job)) return refuse('nothing-proved', {});
    const missing = canGoHome(job, machine, view.parts).filter((one) => one.why !== 'ours-on-machine');
    if (missing.length > 0) return refuse('cannot-go-home', { missing });
    const unit = openUnitOfWork(view, asking);
    unit.enter('ready', 'proved');
    issuePaper(unit, 'return-report', asking);
    return unit.accept();
  },
  () => ({ papers: ['return-report'] }),
);
