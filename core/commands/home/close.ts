import { z } from 'zod';
import { mayCollect } from '../../approval/mayAnswer.ts';
import type { View } from '../../entries/view.ts';
import { replacedParts } from '../../issuing/kinds/replacedPart.ts';
import { canGoHome } from '../../job/home/canGoHome.ts';
import { isProved, notHeld } from '../../job/home/proofs.ts';
import type { Job } from '../../job/job.ts';
import { storageDue } from '../../job/money/storage.ts';
import { personal } from '../../journal/personal.ts';
import { AT_THE_DOOR, OPEN_STAGES } from '../../stage.ts';
import { signed } from '../approval/signed.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zJobId, zLine, zSigned, zText, zThing } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { askForPaper, issuePaper } from '../papers/issue.ts';

const zDifference = z.strictObject({
  what: z.enum(['settings-cleared', 'tie-cut', 'died-here', 'hours-more', 'plugs-out-and-in', 'other']),
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
    const book = openUnitOfWork(view, asking);
    book.enter('ready', 'proved');
    issuePaper(book, 'return-report', asking);
    return book.accept();
  },
  () => ({ papers: ['return-report'] }),
);

/** Declined, not worth it, not found, never answered: it goes home as it came, under the same custody rules. */
export const goHomeAsItCame = jobCommand(
  'go-home-as-it-came',
  z.strictObject({
    job: zJobId,
    why: z.enum(['declined', 'not-worth-it', 'not-found', 'never-answered', 'not-reproduced']),
  }),
  OPEN_STAGES.filter((stage) => stage !== 'home-as-it-came'),
  (view, input, asking) => {
    const book = openUnitOfWork(view, asking);
    for (const question of view.job.questions)
      if (!question.answer && !question.lapsed && !question.withdrawn)
        book.add(`job:${input.job}`, 'question-lapsed', { question: question.id });
    for (const part of view.parts.values())
      if (part.reservedFor === input.job) book.add(`part:${part.id}`, 'part-released', { job: input.job });
    book.enter('home-as-it-came', input.why);
    return book.accept();
  },
);

/** Told the owner that it stands ready. */
export const tellReady = jobCommand(
  'tell-ready',
  z.strictObject({ job: zJobId, how: z.enum(['phone', 'mail', 'message']) }),
  AT_THE_DOOR,
  (_view, { job, how }) => accept({ stream: `job:${job}`, kind: 'told-ready', body: { how } }),
);

/** Reminds an owner who has not come; the last notice names what local law allows, in the shop's own text. */
export const remind = jobCommand(
  'remind',
  z.strictObject({ job: zJobId, last: z.boolean() }),
  AT_THE_DOOR,
  (view, input, asking) => {
    if (!view.job.toldReadyAt) return refuse('owner-not-told', { job: input.job });
    if (input.last && view.job.reminders.length === 0) return refuse('remind-first', { job: input.job });
    const book = openUnitOfWork(view, asking);
    book.add(`job:${input.job}`, 'reminded', { last: input.last });
    book.enter('not-collected', input.last ? 'last-notice' : 'reminded');
    const refusal = askForPaper(book, input.last ? 'last-notice' : 'reminder', asking);
    return refusal ? { ok: false, refusal } : book.accept();
  },
  () => ({ papers: ['reminder', 'last-notice'] }),
);

const zHandOver = z.strictObject({
  job: zJobId,
  collectedBy: zLine,
  signed: zSigned,
  returned: z.array(zThing).max(40),
  oursOff: z.array(zThing).max(40),
  differences: z.array(zDifference).max(20),
});

/**
 * Hands the machine over: accessories ticked back, ours taken off, every part accounted for, by one who may collect,
 * signed. Secrets are wiped. Slip and bill come out.
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
  const short = job.cameAlong.filter(({ thing, count }) => back(thing) < count);
  if (short.length > 0)
    return refuse('came-along-missing', {
      things: short.map(({ thing, count }) => ({ thing, count: count - back(thing) })),
    });
  const book = openUnitOfWork(view, asking);
  for (const thing of input.oursOff) {
    const on = book.view().job?.shopItemsOn.find((one) => one.thing === thing.thing)?.count ?? 0;
    if (on < thing.count) return refuse('not-on-the-machine', { thing: thing.thing, on, asked: thing.count });
    book.add(`job:${job.id}`, 'ours-off', thing);
  }
  const now = book.view();
  const missing = now.job ? canGoHome(now.job, machine, now.parts) : [];
  if (missing.length > 0) return refuse('cannot-go-home', { missing });
  const asItCame = job.stages.some((one) => one.stage === 'home-as-it-came');
  const storage = storageDue(job, settings.rules, asking.at);
  if (storage) book.add(`job:${job.id}`, 'charge-booked', { is: 'storage', ...storage });
  for (const what of job.secrets) book.add(`job:${job.id}`, 'secret-wiped', { what });
  book.add(`job:${job.id}`, 'handed-over', {
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
    if (part.reservedFor === job.id) book.add(`part:${part.id}`, 'part-released', { job: job.id });
  // With the differences, what was signed for and what came on top since it stood ready.
  issuePaper(book, 'return-report', asking);
  if (!asItCame)
    for (const part of replacedParts({ ...now, job, machine })) issuePaper(book, 'replaced-part-slip', asking, part);
  issuePaper(book, 'bill', asking);
  book.enter('gone-home', asItCame ? 'as-it-came' : 'mended');
  return book.accept();
}
