import type refusals from '../../assets/words/en/refusals.json';

type Named = keyof typeof refusals;

/** What kind of refusal it is, by the code that the wire has for it; at the HTTP door it answers with that code's status. */
export type RefusalKind = 'NOT_FOUND' | 'FORBIDDEN' | 'UNPROCESSABLE_CONTENT' | 'CONFLICT';

/** Who asked, or in whose name, may not say this; someone else may. */
const WHO_MAY_NOT: ReadonlySet<string> = new Set<Named>([
  'approver-answers',
  'approves-less',
  'data-owner-answers',
  'first-pin-is-a-keepers',
  'guardian-answers',
  'may-not-answer',
  'may-not-collect',
  'nobody-is-here',
  'nobody-of-the-shop',
  'not-who-is-here',
  'only-keepers',
  'only-the-service',
  'pin-needed',
  'pin-of-another',
  'pin-wrong',
  'recovery-words-wrong',
  'role-may-not',
  'screen-locked',
  'words-are-for-keepers',
]);

/** What was sent says nothing that could hold, at whatever time it is asked again. */
const NEVER_RIGHT: ReadonlySet<string> = new Set<Named>([
  'answered-after-now',
  'answered-before-asked',
  'assembly-of-two-owners',
  'attribute-derived',
  'attribute-too-much',
  'attribute-type',
  'attribute-unknown',
  'attribute-value',
  'clock-ahead',
  'clock-set-back',
  'content-not-named',
  'currency-unknown',
  'currency-without-amounts',
  'data-part-moves-alone',
  'different-kinds',
  'discount-above-price',
  'due-day-past',
  'ends-before-it-starts',
  'happened-after-now',
  'lapses-before-asked',
  'limit-below-fee',
  'limit-below-spent',
  'limit-not-said',
  'needs-own-signature',
  'not-where-a-part-comes',
  'nothing-to-write',
  'offer-and-kind-differ',
  'one-answer-only',
  'option-named-twice',
  'option-passes-its-limit',
  'order-names-no-line',
  'paid-too-much',
  'part-in-two-slots',
  'pin-not-digits',
  'pin-too-long',
  'pin-too-short',
  'promise-before-part',
  'promise-in-the-past',
  'promise-on-closed-day',
  'proof-without-result',
  'recovery-word-unknown',
  'recovery-words-mistyped',
  'recovery-words-not-twelve',
  'return-day-past',
  'righting-says-nothing',
  'slot-has-no-name',
  'slot-named-twice',
  'slot-not-there',
  'tag-not-said',
  'which-part',
  'which-part-came',
  'wrong-kind-for-slot',
]);

/**
 * The kind of a refusal by its name: something named that is not there, a person who may not, input that cannot hold,
 * and else a conflict with how things stand, which may pass once they stand otherwise (RFC 9110, 15.5.4, 15.5.5,
 * 15.5.10, 15.5.21).
 */
export function refusalKind(refused: string): RefusalKind {
  if (refused.startsWith('no-such-')) return 'NOT_FOUND';
  if (WHO_MAY_NOT.has(refused)) return 'FORBIDDEN';
  return NEVER_RIGHT.has(refused) ? 'UNPROCESSABLE_CONTENT' : 'CONFLICT';
}
