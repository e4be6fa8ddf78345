import type { z } from 'zod';
import { type WordAbout, whyMayNotAnswer } from '../../approval/mayAnswer.ts';
import type { Owner } from '../../approval/owner.ts';
import { isSameNumber } from '../../approval/sameNumber.ts';
import type { View } from '../../entries/view.ts';
import type { Refusal } from '../../refusal.ts';
import { MINUTE_MS } from '../../time.ts';
import type { Asking } from '../kernel/asking.ts';
import type { zHow } from '../kernel/fields.ts';

/**
 * Why what was heard is not the owner's word: given by someone who may not give it, from a number that is not on the sheet
 * without a word about it, or at a time that cannot be, before it was asked (`since`, milliseconds since 1970) or after now.
 */
export function whyNotHeard(
  view: View,
  given: { readonly name: string; readonly how: z.infer<typeof zHow> },
  about: WordAbout,
  since: number,
  asking: Asking,
): Refusal | null {
  const { name, how } = given;
  if (!view.owner) return { refused: 'may-not-answer', name };
  const refusal = whyMayNotAnswer(view.owner, name, about);
  if (refusal || how.by === 'counter') return refusal;
  const number = how.by === 'phone' ? otherNumber(view.owner, how) : null;
  if (number) return number;
  if (how.at > asking.at) return { refused: 'answered-after-now', at: how.at, now: asking.at };
  return beforeAsked(how.at, since, asking.at)
    ? { refused: 'answered-before-asked', at: how.at, askedAt: since }
    : null;
}

/** A number that is not on the sheet is not theirs without a word about it. */
function otherNumber(owner: Owner, how: Extract<z.infer<typeof zHow>, { readonly by: 'phone' }>): Refusal | null {
  const reach = owner.reach.value;
  const onSheet = reach?.phone != null && isSameNumber(reach.phone, how.number);
  if (!reach || onSheet || how.otherNumber !== undefined) return null;
  return { refused: 'number-not-on-sheet', number: how.number };
}

/**
 * Was that before it was asked? A phone's clock shows minutes. A question that lies in days to come was written by a
 * clock that was ahead: it says nothing of when it was answered. All three in milliseconds since 1970.
 */
export const beforeAsked = (at: number, askedAt: number, now: number): boolean =>
  askedAt <= now && at < askedAt - MINUTE_MS;
