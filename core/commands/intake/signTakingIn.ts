import { z } from 'zod';
import type { View } from '../../entries/view.ts';
import type { Job } from '../../job/job.ts';
import type { Asking } from '../kernel/asking.ts';
import { shopCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { refuse } from '../kernel/decision.ts';
import { zEpoch, zMinor, zSigned } from '../kernel/fields.ts';
import { inTurn } from '../kernel/inTurn.ts';
import { noteEstimate, zFigures } from '../promise/noteEstimate.ts';
import { promise } from '../promise/promise.ts';
import { addBeforeFirstScrew, zBefore } from './addBeforeFirstScrew.ts';
import { decideAlone, zAlone } from './answerConsent.ts';
import { readReport, zReport } from './readReport.ts';
import { decideSheet, zAnswers, zPhotographs } from './signSheet.ts';
import { aboutTakeIn, tagIn, takeIn, zTakeIn } from './takeIn.ts';

const zSignTakingIn = zTakeIn.extend({
  /** Null while the owner has not said one: shown without, and never signed. */
  limitMinor: zMinor.nullable(),
  /** The day the owner was told; null where none was. */
  promised: zEpoch.nullable(),
  /** The second tier, where it was asked already. */
  before: zBefore.nullable(),
  report: zReport.nullable(),
  /** The figure the owner was told at the counter, as it stands on the papers. */
  estimate: zFigures.nullable(),
  answers: zAnswers,
  photographs: zPhotographs,
  /** Lines with a signature of their own. */
  alone: z.array(zAlone).max(8),
  signed: zSigned,
});

/** Larger than any limit; stands in where none was said, and is shown nowhere. */
const NO_LIMIT = 1_000_000_000_000;

/**
 * Takes a machine in and has the sheet signed, in one: taken in, promised, asked, read, estimated, signed. Out come
 * receipt, consent sheet, estimate and tag. Refuses what any of these would refuse, and then nothing is written.
 */
export const signTakingIn = shopCommand(
  'sign-taking-in',
  zSignTakingIn,
  (input) => ({ ...aboutTakeIn(input), papers: ['intake-receipt', 'consent-sheet', 'estimate', 'bench-tag'] }),
  decideSignTakingIn,
);

function decideSignTakingIn(view: View, input: z.infer<typeof zSignTakingIn>, given: Asking): Decision {
  const { limitMinor, promised, before, report, estimate, answers, photographs, alone, signed, ...taken } = input;
  // The papers say it, so it is on them before they are signed.
  if (view.machine?.tag == null && tagIn(taken.machine) === null) return refuse('tag-not-said');
  if (limitMinor === null && signed.contentHash !== null) return refuse('limit-not-said');
  const asking: Asking = limitMinor === null ? { ...given, limitOpen: true } : given;
  return inTurn(view, asking, [
    () => takeIn.draft(view, { ...taken, limitMinor: limitMinor ?? NO_LIMIT }, asking),
    ...(promised === null
      ? []
      : [ofJob((now) => promise.draft(now, { job: now.job.id, at: promised, p90: promised, told: true }, asking))]),
    ...(before ? [ofJob((now) => addBeforeFirstScrew.draft(now, { ...before, job: now.job.id }, asking))] : []),
    ...(report ? [ofJob((now) => readReport.draft(now, { ...report, job: now.job.id }, asking))] : []),
    ...(estimate ? [ofJob((now) => noteEstimate.draft(now, { ...estimate, job: now.job.id }, asking))] : []),
    ...alone.map((line) => ofJob((now) => decideAlone(now, line, asking))),
    ofJob((now) => decideSheet(now, { job: now.job.id, answers, photographs, signed }, asking)),
  ]);
}

/** A decision about the job that was begun just before. */
const ofJob =
  (decide: (now: View & { readonly job: Job }) => Decision) =>
  (now: View): Decision =>
    now.job ? decide({ ...now, job: now.job }) : refuse('no-such-job', { job: '' });
