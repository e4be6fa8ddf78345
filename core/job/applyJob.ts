import { chosenOf, limitAfter, limitByAnswers, type Question } from '../approval/question.ts';
import { jobId } from '../ids.ts';
import type { Personal } from '../journal/personal.ts';
import type { Written } from '../journal/written.ts';
import { currentOutcome, currentStep } from '../tracing/live/renamed/aliases.ts';
import { answeredInOrder } from './approval/answeredInOrder.ts';
import { cameAfter } from './came.ts';
import type { JobEntry, JobVerdict } from './entries.ts';
import { withEstimate } from './estimate.ts';
import { type Job, newJob, type SaidWhy } from './job.ts';
import { applyOrder, isOrderEntry } from './orders/applyOrder.ts';
import type { CameAlong, Thing } from './told.ts';
import { newWork, type Work } from './work.ts';

const changeQuestion = (job: Job, id: string, change: (question: Question) => Question): Job => ({
  ...job,
  questions: job.questions.map((question) => (question.id === id ? change(question) : question)),
});

function addFound(things: readonly CameAlong[], { id, thing, count }: CameAlong): readonly CameAlong[] {
  const had = things.find((one) => one.id === id);
  const sum = { id, thing, count: (had?.count ?? 0) + count };
  return [...things.filter((one) => one.id !== id), sum];
}

function addThing(things: readonly Thing[], { thing, count }: Thing): readonly Thing[] {
  const had = things.find((one) => one.thing === thing);
  const rest = things.filter((one) => one.thing !== thing);
  const sum = (had?.count ?? 0) + count;
  return sum > 0 ? [...rest, { thing, count: sum }] : rest;
}

/** Steps that the fault model calls otherwise since they were logged go by the name of today. */
const workNow = ({ kind, what }: Pick<Work, 'kind' | 'what'>): string => (kind === 'step' ? currentStep(what) : what);

/** Leaving it so changes nothing of who found it. */
const isLeftSo = (verdict: JobVerdict): boolean => 'leftSo' in verdict && verdict.leftSo !== undefined;

const outcomeNow = ({ kind, what }: Pick<Work, 'kind' | 'what'>, outcome: string): string =>
  kind === 'step' ? currentOutcome(what, outcome) : outcome;

function withWork(job: Job, work: Work): Job {
  const known = job.work.some((one) => one.run === work.run);
  return { ...job, work: known ? job.work.map((one) => (one.run === work.run ? work : one)) : [...job.work, work] };
}

const saidWhy = (
  entry: { readonly body: { readonly why: Personal<string> } } & Pick<Written, 'at' | 'by'>,
): SaidWhy => ({ why: entry.body.why.value ?? '', at: entry.at, by: entry.by });

/** The job after one more entry of its stream; null before the first. */
export function applyJob(job: Job | null, entry: JobEntry & Written): Job | null {
  const next = applied(job, entry);
  return next && job && entry.kind !== 'taken-in' ? { ...next, came: cameAfter(job.came, entry) } : next;
}

function applied(job: Job | null, entry: JobEntry & Written): Job | null {
  const { at } = entry;
  if (entry.kind === 'taken-in') return newJob(jobId(entry.stream.slice('job:'.length)), at, entry.by, entry.body);
  if (!job) return null;
  if (isOrderEntry(entry)) return applyOrder(job, entry, at);
  switch (entry.kind) {
    case 'sheet-signed':
      return {
        ...job,
        consents: {
          ...job.consents,
          answers: { ...job.consents.answers, ...entry.body.answers },
          signature: entry.body.signature,
        },
      };
    case 'consent-signed-alone': {
      const { id, answer, signature, about } = entry.body;
      return {
        ...job,
        consents: {
          ...job.consents,
          answers: { ...job.consents.answers, [id]: answer },
          own: { ...job.consents.own, [id]: signature },
          about: about === null ? job.consents.about : { ...job.consents.about, [id]: about },
          withdrawn: job.consents.withdrawn.filter((one) => one !== id),
        },
      };
    }
    case 'consent-answered':
      return {
        ...job,
        consents: {
          ...job.consents,
          answers: { ...job.consents.answers, [entry.body.id]: entry.body.answer },
          withdrawn: job.consents.withdrawn.filter((one) => one !== entry.body.id),
        },
      };
    case 'consent-withdrawn':
      return {
        ...job,
        consents: {
          ...job.consents,
          withdrawn: [...job.consents.withdrawn, entry.body.id],
          withdrawnAt: { ...job.consents.withdrawnAt, [entry.body.id]: at },
        },
      };
    case 'asked-before-first-screw':
      return { ...job, before: entry.body };
    case 'thing-found':
      return { ...job, found: [...job.found, entry.body], cameAlong: addFound(job.cameAlong, entry.body) };
    case 'ours-on':
      return { ...job, shopItemsOn: addThing(job.shopItemsOn, entry.body) };
    case 'ours-off':
      return { ...job, shopItemsOn: addThing(job.shopItemsOn, { thing: entry.body.thing, count: -entry.body.count }) };
    case 'photographed':
      return { ...job, photographs: [...job.photographs, { ...entry.body, at }] };
    case 'secret-sealed':
      return { ...job, secrets: [...job.secrets, { id: entry.body.id, what: entry.body.what }] };
    case 'secret-wiped':
      return { ...job, secrets: job.secrets.filter(({ id }) => id !== entry.body.id) };
    case 'told-corrected':
      return { ...job, told: { ...job.told, ...entry.body } };
    case 'worth-told':
      return { ...job, worthMinor: entry.body.worthMinor };
    case 'seen':
      return { ...job, seen: entry.body.symptoms, differs: entry.body.differs };
    case 'could-not-be-reproduced':
      return { ...job, seen: job.seen ?? [] };
    case 'stage-entered':
      return {
        ...job,
        stage: entry.body.stage,
        stages: [...job.stages, { stage: entry.body.stage, at, why: entry.body.why }],
      };
    case 'work-started':
      return withWork(job, { ...newWork({ ...entry.body, by: entry.by }), ...entry.body, what: workNow(entry.body) });
    case 'work-finished': {
      const { ours, also, ...finished } = entry.body;
      const begun = job.work.find(({ run }) => run === finished.run);
      return withWork(job, {
        ...finished,
        what: workNow(entry.body),
        outcome: outcomeNow(entry.body, entry.body.outcome),
        ...(also && { also: also.map((outcome) => outcomeNow(entry.body, outcome)) }),
        ...(ours !== undefined && { unbilled: ours }),
        by: entry.by,
        turns: begun?.turns ?? [],
        ...(begun?.ownWord && { ownWord: begun.ownWord }),
        struck: null,
      });
    }
    case 'arrangement-tried':
      return { ...job, arrangements: [...job.arrangements, { ...entry.body, at }] };
    case 'work-turned': {
      const { run, ...turn } = entry.body;
      return {
        ...job,
        work: job.work.map((one) => (one.run === run ? { ...one, turns: [...one.turns, turn] } : one)),
      };
    }
    case 'work-struck':
      return {
        ...job,
        work: job.work.map((one) =>
          one.run === entry.body.run ? { ...one, struck: { why: entry.body.why, at } } : one,
        ),
      };
    case 'noted':
      return {
        ...job,
        notes: [...job.notes, { says: entry.body.says.value, foundByTheWay: entry.body.foundByTheWay, at }],
      };
    case 'estimated':
      return { ...job, estimates: withEstimate(job.estimates, { ...entry.body, at }) };
    case 'promised':
      return { ...job, promised: entry.body };
    case 'promise-told':
      return {
        ...job,
        promised: job.promised && { ...job.promised, told: true },
        promisesTold: [...job.promisesTold, { ...entry.body, at: entry.at, by: entry.by }],
      };
    case 'question-put':
      return { ...job, questions: [...job.questions, entry.body] };
    case 'contact-attempted': {
      const { question, how, result, at: when } = entry.body;
      return changeQuestion(job, question, (one) => ({ ...one, tries: [...one.tries, { at: when, how, result }] }));
    }
    case 'answered':
      return answered(job, entry.body);
    case 'question-lapsed':
      return {
        ...changeQuestion(job, entry.body.question, (one) => ({ ...one, lapsed: true })),
        lapses: { ...job.lapses, [entry.body.question]: at },
      };
    case 'word-withdrawn': {
      const withdrawn = changeQuestion(job, entry.body.question, (one) => ({ ...one, withdrawn: true }));
      const { limitMinor } = entry.body;
      const left = {
        ...withdrawn,
        agreedLines: job.agreedLines.filter((line) => line.question !== entry.body.question),
        orders: job.orders.map((one) => (one.agreedBy === entry.body.question ? { ...one, agreedBy: null } : one)),
      };
      return limitMinor === undefined ? withLimit(left) : { ...left, limitMinor };
    }
    case 'charge-booked':
      return { ...job, booked: [...job.booked, entry.body] };
    case 'paid':
      return { ...job, paid: [...job.paid, { ...entry.body, at, by: entry.by }] };
    case 'payment-struck': {
      const { nth, why } = entry.body;
      const struck = { why: why.value ?? '', at, by: entry.by };
      return { ...job, paid: job.paid.map((one, i) => (i === nth - 1 ? { ...one, struck } : one)) };
    }
    case 'fee-waived':
      return { ...job, feeWaived: saidWhy(entry) };
    case 'left-unpaid':
      return { ...job, leftUnpaid: { minor: entry.body.minor, ...saidWhy(entry) } };
    case 'thing-lost':
      return { ...job, lost: [...job.lost, { ...entry.body, says: entry.body.says.value ?? '', at }] };
    case 'taking-in-cancelled':
      return { ...job, cancelled: saidWhy(entry) };
    case 'owner-corrected':
      return { ...job, ownerCorrections: [...job.ownerCorrections, { ...entry.body, at, by: entry.by }] };
    case 'line-fitted':
      return {
        ...job,
        agreedLines: job.agreedLines.map((line) => (line.part === entry.body.part ? { ...line, fitted: true } : line)),
      };
    case 'judged':
      return { ...job, verdict: entry.body, judgedBy: isLeftSo(entry.body) ? job.judgedBy : entry.by };
    case 'thought':
      return { ...job, thoughts: [...job.thoughts, { ...entry.body, at, by: entry.by }] };
    case 'verdict-struck':
      return {
        ...job,
        verdict: null,
        struckVerdicts: job.verdict ? [...job.struckVerdicts, job.verdict] : job.struckVerdicts,
      };
    case 'line-agreed':
      return { ...job, agreedLines: [...job.agreedLines, entry.body] };
    case 'part-joined':
      return job.parts.includes(entry.body.part) ? job : { ...job, parts: [...job.parts, entry.body.part] };
    case 'incident':
      return { ...job, incidents: [...job.incidents, { ...entry.body, told: false, at }] };
    case 'destroyed':
      return { ...job, destroyed: [...job.destroyed, { ...entry.body, at, by: entry.by }] };
    case 'incident-told':
      return {
        ...job,
        incidents: job.incidents.map((one) => (one.id === entry.body.id ? { ...one, told: true } : one)),
      };
    case 'left-like-this':
      return { ...job, left: { ...entry.body, at, confirmed: false } };
    case 'left-confirmed':
      return { ...job, left: job.left && { ...job.left, confirmed: true } };
    case 'told-ready':
      return { ...job, toldReadyAt: at };
    case 'reminded':
      return { ...job, reminders: [...job.reminders, { at, last: entry.body.last }] };
    case 'handed-over':
      return { ...job, handover: { ...entry.body, at } };
    case 'came-back':
      return { ...job, cameBackAs: { job: entry.body.as, same: entry.body.same } };
    case 'paper-named':
      return { ...job, papers: [...job.papers, { ...entry.body, at }] };
  }
}

type Answered = Extract<JobEntry, { readonly kind: 'answered' }>['body'];

/** The limit that an answer names, or raises, holds from then on; one that does neither leaves it. */
function answered(job: Job, { question, answer }: Answered): Job {
  const options = job.questions.find((one) => one.id === question)?.options ?? [];
  return {
    ...changeQuestion(job, question, (one) => ({ ...one, answer })),
    limitMinor: limitAfter(job.limitMinor, chosenOf({ options, answer })),
  };
}

/** The job with the limit that holds by all that was answered so far. */
export const withLimit = (job: Job): Job => ({
  ...job,
  limitMinor: limitByAnswers(job.firstLimitMinor, answeredInOrder(job)),
});
