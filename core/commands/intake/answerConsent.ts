import { z } from 'zod';
import { OWN_SIGNATURE } from '../../approval/consent.ts';
import type { Bodies, KindOf } from '../../entries/subjects.ts';
import type { View } from '../../entries/view.ts';
import type { Job } from '../../job/job.ts';
import { personal } from '../../journal/personal.ts';
import { OPEN_STAGES, STAGES } from '../../stage.ts';
import { whyNotHeard } from '../approval/heard.ts';
import { howAnswered } from '../approval/howAnswered.ts';
import { signed } from '../approval/signed.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import { type Decision, refuse } from '../kernel/decision.ts';
import { zHow, zJobId, zLine, zSigned, zText } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';
import { consentAbout, dataOwnerSigns, guardianSigns, zConsent, zYesNo } from './signSheet.ts';

export const zAlone = z.strictObject({ id: zConsent, answer: zYesNo, about: zText.nullable(), signed: zSigned });

/** A line with a signature of its own: filming, publishing, destroying data, risk. */
export const signAlone = jobCommand(
  'sign-alone',
  zAlone.extend({ job: zJobId }),
  OPEN_STAGES,
  (view, input, asking) => {
    const refusal = guardianSigns(view, input.signed.name) ?? dataOwnerSigns(view, input.id, input.signed.name);
    if (refusal) return { ok: false, refusal };
    return onTheSheet(view, asking, 'consent-signed-alone', {
      id: input.id,
      answer: input.answer,
      about: input.about,
      signature: signed(asking, view.job.owner, input.signed),
    });
  },
  () => ({ papers: ['consent-sheet'] }),
);

/** Writes what changes the sheet; where one was issued, a new one takes its place. */
function onTheSheet<Kind extends KindOf<'job'>>(
  view: View & { readonly job: Job },
  asking: Asking,
  kind: Kind,
  body: Bodies['job'][Kind],
): Decision {
  const unit = openUnitOfWork(view, asking);
  unit.add<`job:${string}`, Kind>(`job:${view.job.id}`, kind, body);
  if (view.job.papers.some((paper) => paper.kind === 'consent-sheet')) issuePaper(unit, 'consent-sheet', asking);
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
    const refusal = whyNotHeard(view, input, consentAbout(view.job, input.id), view.job.takenInAt, asking);
    if (refusal) return { ok: false, refusal };
    return onTheSheet(view, asking, 'consent-answered', {
      id: input.id,
      answer: input.answer,
      name: personal('record', view.job.owner, input.name),
      how: howAnswered(asking, view.job.owner, input.how),
    });
  },
  () => ({ papers: ['consent-sheet'] }),
);

/** Takes a consent back for what is not done yet; one to publish also after the machine has gone home. */
export const withdrawConsent = jobCommand(
  'withdraw-consent',
  z.strictObject({ job: zJobId, id: zConsent }),
  STAGES,
  (view, input, asking) => onTheSheet(view, asking, 'consent-withdrawn', { id: input.id }),
  () => ({ papers: ['consent-sheet'] }),
);
