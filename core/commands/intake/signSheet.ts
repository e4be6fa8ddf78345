import { z } from 'zod';
import { CONSENTS, type ConsentId, OWN_SIGNATURE } from '../../approval/consent.ts';
import { whyMayNotAnswer } from '../../approval/mayAnswer.ts';
import type { View } from '../../entries/view.ts';
import type { Job } from '../../job/job.ts';
import type { Refusal } from '../../refusal.ts';
import { signed } from '../approval/signed.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import { type Decision, refuse } from '../kernel/decision.ts';
import { zId, zJobId, zLine, zSigned } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';
import { whySignedStays } from '../papers/signedStays.ts';

export const zConsent = z.enum(CONSENTS);

export const zYesNo = z.enum(['yes', 'no', 'back', 'keep', 'send']);

export const zPhotographs = z.array(z.strictObject({ of: zLine, blob: zId })).max(20);

export const zAnswers = z.partialRecord(zConsent, zYesNo);

const zSheet = z.strictObject({
  job: zJobId,
  answers: zAnswers,
  /** Taken before the owner signed; the blobs were stored before. */
  photographs: zPhotographs.optional(),
  signed: zSigned,
});

/** What comes out under the one signature. */
const SHEET_PAPERS = ['intake-receipt', 'consent-sheet', 'estimate', 'bench-tag'] as const;

/** The one signature under all lines of the sheet. Out come receipt, consent sheet, estimate and tag. */
export const signSheet = jobCommand(
  'sign-sheet',
  zSheet,
  ['taken-in'],
  (view, input, asking) => decideSheet(view, input, asking),
  () => ({ papers: SHEET_PAPERS }),
);

/**
 * Signs the sheet; before a limit was said, what cannot be said without one is left out. Refused: `signed-stays` (it was
 * signed already), `needs-own-signature` (yeses that one signature does not cover), whatever `guardianSigns` says,
 * `consent-missing` (photographs without a yes).
 */
export function decideSheet(
  view: View & { readonly job: Job },
  input: z.infer<typeof zSheet>,
  asking: Asking,
): Decision {
  const stays = whySignedStays(view.job, 'consent-sheet');
  if (stays) return { ok: false, refusal: stays };
  const alone = OWN_SIGNATURE.filter((id) => input.answers[id] === 'yes');
  if (alone.length > 0) return refuse('needs-own-signature', { consents: alone });
  const refusal = guardianSigns(view, input.signed.name);
  if (refusal) return { ok: false, refusal };
  const { photographs = [] } = input;
  // While the sheet is written their yes is still to come; nothing is signed without it.
  const written = input.signed.contentHash === null;
  if (photographs.length > 0 && input.answers.photos !== 'yes' && !written)
    return refuse('consent-missing', { needs: ['photos'] });
  const unit = openUnitOfWork(view, asking);
  unit.add(`job:${input.job}`, 'sheet-signed', {
    answers: input.answers,
    signature: signed(asking, view.job.owner, input.signed),
  });
  for (const photograph of photographs) unit.add(`job:${input.job}`, 'photographed', photograph);
  for (const kind of SHEET_PAPERS) if (!(asking.limitOpen && kind === 'estimate')) issuePaper(unit, kind, asking);
  return unit.accept();
}

/** Lines about what is on the machine's drives: of someone else's machine only its owner answers them. */
const ABOUT_DATA: readonly ConsentId[] = ['read', 'copy', 'write', 'data-parts', 'destroy', 'no-backup', 'risk-key'];

/**
 * What answering a line of the sheet is about: the limit in minor units where it is the limit, and whether it touches
 * data.
 */
export const consentAbout = (job: Job, id: ConsentId) => ({
  amountMinor: id === 'limit' ? job.limitMinor : null,
  data: ABOUT_DATA.includes(id),
});

/** A minor's sheet is signed by the guardian. */
export const guardianSigns = (view: View, name: string): Refusal | null =>
  view.owner?.kind.is === 'minor' ? whyMayNotAnswer(view.owner, name, { amountMinor: null, data: false }) : null;

/** Of a machine brought for someone else, lines about data are signed by its owner; null where this name may. */
export const dataOwnerSigns = (view: View, id: ConsentId, name: string): Refusal | null =>
  view.owner?.kind.is === 'for-someone-else' && ABOUT_DATA.includes(id)
    ? whyMayNotAnswer(view.owner, name, { amountMinor: null, data: true })
    : null;
