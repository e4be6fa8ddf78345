import type { EpochMs } from '../time.ts';
import type { Signature } from './signature.ts';

/** Every consent line of the sheet; `dead` and `data-parts` take one of several answers, the rest yes or no. */
export const CONSENTS = [
  'open',
  'own-parts-in',
  'limit',
  'fee',
  'offer-lesser',
  'start-own',
  'read',
  'copy',
  'write',
  'keep-days',
  'photos',
  'film',
  'publish',
  'dead',
  'data-parts',
  'destroy',
  'no-backup',
  'risk',
  'risk-key',
  'warranty-said',
  'who-collects',
] as const;
export type ConsentId = (typeof CONSENTS)[number];

/** Lines that need a signature of their own. */
export const OWN_SIGNATURE: readonly ConsentId[] = ['film', 'publish', 'destroy', 'risk', 'risk-key'];

/** What a line can be answered. */
export const CONSENT_ANSWERS = ['yes', 'no', 'back', 'keep', 'send'] as const;
export type ConsentAnswer = (typeof CONSENT_ANSWERS)[number];

export type Consents = {
  /** What was answered; a line that is not here was not answered, and that is a no. */
  readonly answers: { readonly [id: string]: ConsentAnswer };
  /** The one signature over the sheet. */
  readonly signature: Signature | null;
  readonly own: { readonly [id: string]: Signature };
  /** What a line with a signature of its own was said to be about. */
  readonly about: { readonly [id: string]: string };
  readonly withdrawn: readonly string[];
  /** When each was taken back. */
  readonly withdrawnAt?: { readonly [id: string]: EpochMs };
};

export const noConsents: Consents = { answers: {}, signature: null, own: {}, about: {}, withdrawn: [] };

/** Is this line agreed to: answered yes, signed, and not taken back? Unanswered is no. */
export function agreed(consents: Consents, id: ConsentId): boolean {
  if (consents.withdrawn.includes(id) || consents.answers[id] !== 'yes' || !consents.signature) return false;
  return !OWN_SIGNATURE.includes(id) || consents.own[id] !== undefined;
}

/** What becomes of a dead part unless the owner says otherwise for that part. */
export const deadPartAnswer = (consents: Consents): 'back' | 'keep' | 'send' => {
  const answer = consents.withdrawn.includes('dead') ? 'back' : consents.answers.dead;
  return answer === 'keep' || answer === 'send' ? answer : 'back';
};
