import type { PhoneSentence } from '../contract/screens.ts';
import { isOpen } from '../word/question.ts';
import type { Job } from './job.ts';

/** What the desk may say when someone asks "how is it?": one sentence, by name and facts, from the journal alone. */
export function phoneSentence(job: Job): PhoneSentence {
  const promised = job.promised?.at ?? job.deadline;
  const facts = promised === null || promised === undefined ? {} : { promised };
  const say = (says: string, more: Record<string, string | number> = {}): PhoneSentence => ({
    says,
    facts: { ...facts, ...more },
  });
  switch (job.stage) {
    case 'taken-in':
      return say('phone-taken-in');
    case 'first-power-on':
      return say('phone-looked-at');
    case 'tracing':
      return job.verdict?.is === 'confirmed' ? say('phone-found') : say('phone-tracing');
    case 'owners-word-needed': {
      const open = job.questions.find(isOpen);
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
      return say('phone-gone', { at: job.handover?.at ?? 0 });
  }
}
