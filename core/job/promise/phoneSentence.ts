import { isOpen } from '../../approval/question.ts';
import type { EpochMs } from '../../time.ts';
import type { Job } from '../job.ts';
import { LATE_FROM, type Outlook } from './turns.ts';

/**
 * What the desk may say when someone asks "how is it?": one sentence, by name and facts, from the journal alone. That
 * it is late, or will likely be, comes before anything else that is ours to do.
 */
export function phoneSentence(job: Job, outlook: Outlook | null, now: EpochMs): PhoneSentence {
  const promised = job.promised?.at ?? job.deadline;
  const facts = promised === null || promised === undefined ? {} : { promised };
  const say = (says: string, more: Record<string, string | number> = {}): PhoneSentence => ({
    says,
    facts: { ...facts, ...more },
  });
  const later = latePromise(job, outlook, now);
  if (later) return say(later.says, later.facts);
  switch (job.stage) {
    case 'taken-in':
      return say('phone-taken-in');
    case 'first-power-on':
      return say('phone-looked-at');
    case 'tracing':
      return job.verdict?.is === 'confirmed' ? say('phone-found') : say('phone-tracing');
    case 'owners-word-needed': {
      const open = job.questions.find((one) => isOpen(one) && one.validUntil > now);
      return open
        ? say('phone-waits-for-word', { until: open.validUntil, tries: open.tries.length })
        : say('phone-will-ask');
    }
    case 'part-on-the-way': {
      const due = job.orders.find((order) => order.received === null)?.due;
      return due ? say('phone-part-due', { due }) : say('phone-part-ordered');
    }
    case 'fitting':
      return job.verdict?.is === 'confirmed' ? say('phone-failed-agreed') : say('phone-fitting');
    case 'proving':
      return say('phone-proving');
    case 'ready':
      return say('phone-ready');
    case 'not-collected':
      return say('phone-not-collected');
    case 'home-as-it-came':
      return say('phone-as-it-came');
    case 'gone-home':
      return say('phone-gone', { at: job.handover?.at ?? job.stages.at(-1)?.at ?? job.takenInAt });
  }
}

/** Stages in which the day is ours to keep. */
const OURS: readonly Job['stage'][] = [
  'taken-in',
  'first-power-on',
  'tracing',
  'part-on-the-way',
  'fitting',
  'proving',
];

function latePromise(job: Job, outlook: Outlook | null, now: EpochMs): PhoneSentence | null {
  const { promised } = job;
  if (!promised || !OURS.includes(job.stage)) return null;
  const late = promised.at < now;
  if (late || (outlook?.lateChance ?? 0) > LATE_FROM) {
    const likely = outlook?.day ?? null;
    if (likely === null) return { says: late ? 'phone-is-late-open' : 'phone-will-be-late-open', facts: {} };
    return { says: late ? 'phone-is-late' : 'phone-will-be-late', facts: { likely } };
  }
  const told = job.promisesTold.at(-1);
  return told && told.promised === promised.at && told.was !== null && told.was < promised.at
    ? { says: 'phone-told-later', facts: { told: told.at, was: told.was } }
    : null;
}

/** A sentence by name and facts; words come from assets/ by language. */
export type PhoneSentence = { readonly says: string; readonly facts: { readonly [name: string]: string | number } };
