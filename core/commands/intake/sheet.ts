import { z } from 'zod';
import { CONSENTS, type ConsentId, OWN_SIGNATURE } from '../../approval/consent.ts';
import { whyMayNotAnswer } from '../../approval/mayAnswer.ts';
import type { Bodies, KindOf } from '../../entries/subjects.ts';
import type { View } from '../../entries/view.ts';
import type { Job } from '../../job/job.ts';
import { personal } from '../../journal/personal.ts';
import type { Refusal } from '../../refusal.ts';
import { AT_THE_BENCH, OPEN_STAGES, STAGES } from '../../stage.ts';
import { whyNotHeard } from '../approval/heard.ts';
import { howAnswered } from '../approval/howAnswered.ts';
import { signed } from '../approval/signed.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zHow, zId, zJobId, zLine, zMinor, zSigned, zText } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';

const zConsent = z.enum(CONSENTS);
const zYesNo = z.enum(['yes', 'no', 'back', 'keep', 'send']);

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

/** Signs the sheet; before a limit was said, what cannot be said without one is left out. */
export function decideSheet(
  view: View & { readonly job: Job },
  input: z.infer<typeof zSheet>,
  asking: Asking,
): Decision {
  const alone = OWN_SIGNATURE.filter((id) => input.answers[id] === 'yes');
  if (alone.length > 0) return refuse('needs-own-signature', { consents: alone });
  const refusal = guardianSigns(view, input.signed.name);
  if (refusal) return { ok: false, refusal };
  const { photographs = [] } = input;
  // While the sheet is written their yes is still to come; nothing is signed without it.
  const written = input.signed.contentHash === null;
  if (photographs.length > 0 && input.answers.photos !== 'yes' && !written)
    return refuse('consent-missing', { needs: ['photos'] });
  const book = openUnitOfWork(view, asking);
  book.add(`job:${input.job}`, 'sheet-signed', {
    answers: input.answers,
    signature: signed(asking, view.job.owner, input.signed),
  });
  for (const photograph of photographs) book.add(`job:${input.job}`, 'photographed', photograph);
  for (const kind of SHEET_PAPERS) if (!(asking.limitOpen && kind === 'estimate')) issuePaper(book, kind, asking);
  return book.accept();
}

/** Lines about what is on the machine's drives: of someone else's machine only its owner answers them. */
const ABOUT_DATA: readonly ConsentId[] = ['read', 'copy', 'write', 'data-parts', 'destroy', 'no-backup', 'risk-key'];

const consentAbout = (job: Job, id: ConsentId) => ({
  amountMinor: id === 'limit' ? job.limitMinor : null,
  data: ABOUT_DATA.includes(id),
});

/** A minor's sheet is signed by the guardian. */
const guardianSigns = (view: View, name: string): Refusal | null =>
  view.owner?.kind.is === 'minor' ? whyMayNotAnswer(view.owner, name, { amountMinor: null, data: false }) : null;

const dataOwnerSigns = (view: View, id: ConsentId, name: string): Refusal | null =>
  view.owner?.kind.is === 'for-someone-else' && ABOUT_DATA.includes(id)
    ? whyMayNotAnswer(view.owner, name, { amountMinor: null, data: true })
    : null;

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
  const book = openUnitOfWork(view, asking);
  book.add<`job:${string}`, Kind>(`job:${view.job.id}`, kind, body);
  if (view.job.papers.some((paper) => paper.kind === 'consent-sheet')) issuePaper(book, 'consent-sheet', asking);
  return book.accept();
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

export const zBefore = z.strictObject({
  encryption: z.enum(['yes', 'no', 'unknown']),
  keyInHand: z.boolean(),
  keyPlace: zLine.nullable(),
  backup: z.enum(['yes', 'no', 'unknown', 'old']),
  bought: zLine.nullable(),
  from: zLine.nullable(),
  makersWarranty: z.enum(['running', 'over', 'unknown']),
  seals: z.enum(['none', 'whole', 'broken', 'unknown']),
});

/** The second tier, before the first screw. */
export const addBeforeFirstScrew = jobCommand(
  'add-before-first-screw',
  zBefore.extend({ job: zJobId }),
  OPEN_STAGES,
  (view, { job, keyPlace, ...rest }) =>
    accept({
      stream: `job:${job}`,
      kind: 'asked-before-first-screw',
      body: { ...rest, keyPlace: keyPlace === null ? null : personal('contact', view.job.owner, keyPlace) },
    }),
);

/** Puts right what was told, in terms, keeping the owner's own words. */
export const correctTold = jobCommand(
  'correct-told',
  z.strictObject({ job: zJobId, symptoms: z.array(zId).min(1).max(12), often: z.array(zId).max(4) }),
  AT_THE_BENCH,
  (_view, { job, symptoms, often }) =>
    accept({ stream: `job:${job}`, kind: 'told-corrected', body: { symptoms, often } }),
);

/** Writes down, or puts right, what the machine is worth to its owner; null: they cannot say. */
export const tellWorth = jobCommand(
  'tell-worth',
  z.strictObject({ job: zJobId, worthMinor: zMinor.nullable() }),
  OPEN_STAGES,
  (_view, { job, worthMinor }) => accept({ stream: `job:${job}`, kind: 'worth-told', body: { worthMinor } }),
);
