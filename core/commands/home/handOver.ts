import { z } from 'zod';
import { mayCollect } from '../../approval/mayAnswer.ts';
import type { View } from '../../entries/view.ts';
import { replacedParts } from '../../issuing/kinds/replacedPart.ts';
import { canGoHome } from '../../job/home/canGoHome.ts';
import { stillHere } from '../../job/home/stillHere.ts';
import type { Job } from '../../job/job.ts';
import { charges } from '../../job/money/charges.ts';
import { storageDue } from '../../job/money/storageDue.ts';
import { personal } from '../../journal/personal.ts';
import { AT_THE_DOOR } from '../../stage.ts';
import { signed } from '../approval/signed.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import { type Decision, refuse } from '../kernel/decision.ts';
import { zJobId, zLine, zSigned, zThing } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { wentAsItCame } from '../money/bookCharge.ts';
import { issuePaper } from '../papers/issue.ts';
import { zDifference } from './markReady.ts';

const zHandOver = z.strictObject({
  job: zJobId,
  collectedBy: zLine,
  signed: zSigned,
  returned: z.array(zThing).max(40),
  oursOff: z.array(zThing).max(40),
  differences: z.array(zDifference).max(20),
  /** Why it goes home with something still to be paid; else all is paid. */
  unpaid: zLine.exactOptional(),
});

/**
 * Hands the machine over: accessories ticked back, ours taken off, every part accounted for, by one who may collect,
 * signed. Secrets are wiped. Slip and bill come out. Refused: `no-such-machine`, `may-not-collect`, `came-along-missing`,
 * `not-on-the-machine`, `cannot-go-home` (with all that is missing), `not-paid` where it is not said why nothing more is taken.
 */
export const handOver = jobCommand('hand-over', zHandOver, AT_THE_DOOR, decideHandOver, () => ({
  papers: ['replaced-part-slip', 'bill', 'return-report'],
}));

function decideHandOver(
  view: View & { readonly job: Job },
  input: z.infer<typeof zHandOver>,
  asking: Asking,
): Decision {
  const { job, machine, owner } = view;
  const { settings } = view.shop;
  if (!machine || !owner || !settings) return refuse('no-such-machine', { machine: job.machine });
  if (!mayCollect(owner, input.collectedBy)) return refuse('may-not-collect', { name: input.collectedBy });
  const back = (thing: string) =>
    input.returned.filter((one) => one.thing === thing).reduce((sum, one) => sum + one.count, 0);
  const short = stillHere(job).filter(({ thing, count }) => back(thing) < count);
  if (short.length > 0)
    return refuse('came-along-missing', {
      things: short.map(({ thing, count }) => ({ thing, count: count - back(thing) })),
    });
  const unit = openUnitOfWork(view, asking);
  for (const thing of input.oursOff) {
    const on = unit.view().job?.shopItemsOn.find((one) => one.thing === thing.thing)?.count ?? 0;
    if (on < thing.count) return refuse('not-on-the-machine', { thing: thing.thing, on, asked: thing.count });
    unit.add(`job:${job.id}`, 'ours-off', thing);
  }
  const now = unit.view();
  const missing = now.job ? canGoHome(now.job, machine, now.parts) : [];
  if (missing.length > 0) return refuse('cannot-go-home', { missing });
  const asItCame = wentAsItCame(job);
  const storage = storageDue(job, settings, asking.at);
  if (storage) unit.add(`job:${job.id}`, 'charge-booked', { is: 'storage', ...storage });
  const due = charges(unit.view().job ?? job, asItCame);
  const openMinor = due.owedMinor - due.paidMinor;
  if (openMinor > 0 && input.unpaid === undefined)
    return refuse('not-paid', { openMinor, owedMinor: due.owedMinor, paidMinor: due.paidMinor });
  if (openMinor > 0 && input.unpaid !== undefined)
    unit.add(`job:${job.id}`, 'left-unpaid', {
      minor: openMinor,
      why: personal('record', job.owner, input.unpaid),
    });
  for (const { id } of job.secrets) unit.add(`job:${job.id}`, 'secret-wiped', { id });
  unit.add(`job:${job.id}`, 'handed-over', {
    collectedBy: personal('record', job.owner, input.collectedBy),
    signature: signed(asking, job.owner, input.signed),
    returned: input.returned,
    asItCame,
    differences: input.differences.map((one) => ({
      ...one,
      says: one.says === null ? null : personal('record', job.owner, one.says),
    })),
  });
  for (const part of now.parts.values())
    if (part.reservedFor === job.id) unit.add(`part:${part.id}`, 'part-released', { job: job.id });
  // With the differences, what was signed for and what came on top since it stood ready.
  issuePaper(unit, 'return-report', asking);
  if (!asItCame)
    for (const part of replacedParts({ ...now, job, machine })) issuePaper(unit, 'replaced-part-slip', asking, part);
  issuePaper(unit, 'bill', asking);
  unit.enter('gone-home', asItCame ? 'as-it-came' : 'mended');
  return unit.accept();
}
