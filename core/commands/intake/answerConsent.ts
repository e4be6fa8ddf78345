import { z } from 'zod';
import { agreed, type ConsentId, OWN_SIGNATURE } from '../../approval/consent.ts';
import type { Bodies, KindOf } from '../../entries/subjects.ts';
import type { View } from '../../entries/view.ts';
import type { SignedChange } from '../../issuing/making.ts';
import type { Job } from '../../job/job.ts';
import { lookingBegan } from '../../job/money/charges.ts';
import { isUnderWay, phaseOf } from '../../job/work.ts';
import { personal } from '../../journal/personal.ts';
import type { Refusal } from '../../refusal.ts';
import { OPEN_STAGES, STAGES } from '../../stage.ts';
import { epochMs } from '../../time.ts';
import { whyNotHeard } from '../approval/heard.ts';
import { howAnswered } from '../approval/howAnswered.ts';
import { signed } from '../approval/signed.ts';
import { lackingFor } from '../bench/work/lackingFor.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import { type Decision, refuse } from '../kernel/decision.ts';
import { zHow, zJobId, zLine, zSigned, zText } from '../kernel/fields.ts';
import { openUnitOfWork, type UnitOfWork } from '../kernel/unitOfWork.ts';
import { issueAddendum, issuePaper } from '../papers/issue.ts';
import { consentAbout, dataOwnerSigns, guardianSigns, zConsent, zYesNo } from './signSheet.ts';

export const zAlone = z.strictObject({ id: zConsent, answer: zYesNo, about: zText.nullable(), signed: zSigned });

/**
 * A line with a signature of its own, once the sheet is signed: filming, publishing, destroying data, risk. Before that
 * there is no paper to stand under; then it is signed with the sheet. Refused: `sheet-not-signed`, and as `decideAlone`.
 */
export const signAlone = jobCommand(
  'sign-alone',
  zAlone.extend({ job: zJobId }),
  OPEN_STAGES,
  (view, input, asking) =>
    view.job.consents.signature ? decideAlone(view, input, asking) : refuse('sheet-not-signed', { job: input.job }),
  () => ({ papers: ['addendum'] }),
);

/** Signs a line by itself. Refused: whatever `guardianSigns` and `dataOwnerSigns` say. */
export function decideAlone(
  view: View & { readonly job: Job },
  input: z.infer<typeof zAlone>,
  asking: Asking,
): Decision {
  const refusal = guardianSigns(view, input.signed.name) ?? dataOwnerSigns(view, input.id, input.signed.name);
  if (refusal) return { ok: false, refusal };
  const { id, answer, about } = input;
  const signature = signed(asking, view.job.owner, input.signed);
  const body = { id, answer, about, signature };
  return onTheSheet(view, asking, 'consent-signed-alone', body, { id, by: { is: 'alone', signature } });
}

/** Writes what changes the sheet. One that was signed stays as it was signed; what changed is its addendum. */
function onTheSheet<Kind extends KindOf<'job'>>(
  view: View & { readonly job: Job },
  asking: Asking,
  kind: Kind,
  body: Bodies['job'][Kind],
  change: Pick<Extract<SignedChange, { readonly of: 'consent-sheet' }>, 'id' | 'by'>,
): Decision {
  const unit = openUnitOfWork(view, asking);
  unit.add<`job:${string}`, Kind>(`job:${view.job.id}`, kind, body);
  stopForbidden(unit, asking);
  if (view.job.papers.some((paper) => paper.kind === 'consent-sheet')) {
    if (!view.job.consents.signature) issuePaper(unit, 'consent-sheet', asking);
    else issueAddendum(unit, { of: 'consent-sheet', before: view.job, ...change }, asking);
  }
  return unit.accept();
}

/** A line answered later, by phone or in writing. What needs a signature of its own cannot be answered this way. */
export const answerConsent = jobCommand(
  'answer-consent',
  z.strictObject({ job: zJobId, id: zConsent, answer: zYesNo, name: zLine, how: zHow }),
  OPEN_STAGES,
  (view, input, asking) => {
    if (OWN_SIGNATURE.includes(input.id) && input.answer === 'yes')
      return refuse('needs-own-signature', { consents: [input.id] });
    if (!view.job.consents.signature) return refuse('sheet-not-signed', { job: input.job });
    const begun = input.answer === 'yes' ? null : feeBegun(view.job, input.id);
    if (begun) return { ok: false, refusal: begun };
    const refusal = whyNotHeard(view, input, consentAbout(view.job, input.id), view.job.takenInAt, asking);
    if (refusal) return { ok: false, refusal };
    const { id, answer } = input;
    const name = personal('record', view.job.owner, input.name);
    const how = howAnswered(asking, view.job.owner, input.how);
    const by = { is: 'answer', name, how } as const;
    return onTheSheet(view, asking, 'consent-answered', { id, answer, name, how }, { id, by });
  },
  () => ({ papers: ['consent-sheet', 'addendum'] }),
);

/**
 * Takes a consent back for what is not done yet; one to publish also after the machine has gone home. Work under way that it
 * forbids stands still from that moment on, whoever has it in hand. Refused: `fee-begun`.
 */
export const withdrawConsent = jobCommand(
  'withdraw-consent',
  z.strictObject({ job: zJobId, id: zConsent }),
  STAGES,
  (view, { id }, asking) => {
    const begun = feeBegun(view.job, id);
    if (begun) return { ok: false, refusal: begun };
    return onTheSheet(view, asking, 'consent-withdrawn', { id }, { id, by: { is: 'taken-back' } });
  },
  () => ({ papers: ['consent-sheet', 'addendum'] }),
);

/** A fee for looking stays agreed to once looking began. */
const feeBegun = (job: Job, id: ConsentId): Refusal | null =>
  id === 'fee' && agreed(job.consents, 'fee') && lookingBegan(job) ? { refused: 'fee-begun', job: job.id } : null;

/** Lets the clocks of what may not go on stand still. */
function stopForbidden(unit: UnitOfWork, asking: Asking): void {
  const view = unit.view();
  for (const work of view.job?.work ?? []) {
    if (!view.job || !isUnderWay(work) || phaseOf(work).because === 'consent-missing') continue;
    if (lackingFor({ ...view, job: view.job }, work, asking).length === 0) continue;
    const at = epochMs(Math.max(asking.at, phaseOf(work).at));
    unit.add(`job:${view.job.id}`, 'work-turned', { run: work.run, to: 'paused', at, because: 'consent-missing' });
  }
}
