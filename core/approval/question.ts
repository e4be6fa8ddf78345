import { z } from 'zod';
import { PART_ANSWERS } from '../custody/ownersWord.ts';
import { partIdShape, questionIdShape } from '../ids.ts';
import { personalShape } from '../journal/personal.ts';
import type { Shaped } from '../shape.ts';
import { STAGES } from '../stage.ts';
import { epochMsShape } from '../time.ts';
import { comparedRowShape } from './compare.ts';
import { signatureShape } from './signature.ts';

/** What a question is about. */
export const QUESTION_KINDS = ['changed-finding', 'offer', 'data-first', 'spend', 'part', 'go-on', 'incident'] as const;
export type QuestionKind = (typeof QUESTION_KINDS)[number];

/** A thing or service with its price; its own tax rate where it has one. */
export const pricedItemShape = z.strictObject({
  what: z.string(),
  priceMinor: z.number(),
  taxPermille: z.number().optional(),
});

/** What takes days while tracing and is done by the owner's own word only: a part ordered to try, theirs sent out. */
export const DAYS_AWAY = ['order-to-try', 'send-out'] as const;
export type DaysAway = (typeof DAYS_AWAY)[number];

/** What becomes of data before the part that holds it. */
export const DATA_FIRST = ['copy', 'unplug', 'leave'] as const;
/** In what state a part on offer is. */
export const CONDITIONS = ['new', 'used', 'refurbished'] as const;
/** By what way the owner was tried, and what came of it. */
export const TRY_BY = ['phone', 'mail', 'message', 'letter'] as const;
export const TRY_RESULTS = ['no-answer', 'message-left', 'sent', 'reached'] as const;

/** Where a job goes on after an answer. */
const GOES_ON = [...STAGES, 'back'] as const;

/** What agreeing to an option allows. Only what stands here is allowed by it. */
export const agreesShape = z.strictObject({
  /** New limit for everything, in minor units; null leaves it. */
  limitMinor: z.number().nullable(),
  /** Raises the limit that holds by so much: what a yes in part comes to. It adds up over the options chosen. */
  raisesMinor: z.number().optional(),
  items: z.array(pricedItemShape),
  /** Accepts the part on offer. */
  accepts: z.boolean(),
  data: z.enum(DATA_FIRST).nullable(),
  dead: z.strictObject({ part: partIdShape, answer: z.enum(PART_ANSWERS) }).nullable(),
  /** Accepts what came for an order, at this price, in place of what was agreed before. */
  order: z.strictObject({ order: z.string(), priceMinor: z.number() }).optional(),
  /** Allows what takes days while tracing. */
  daysAway: z.enum(DAYS_AWAY).optional(),
  /** Goes on although it costs more than the machine is worth. */
  beyondWorth: z.literal(true).optional(),
  /** Where the job goes on after this answer; `back` is where it came from. */
  goesTo: z.enum(GOES_ON),
});
export type Agrees = Shaped<typeof agreesShape>;

export const questionOptionShape = z.strictObject({ id: z.string(), says: z.string(), agrees: agreesShape });
export type QuestionOption = Shaped<typeof questionOptionShape>;

/** A part on offer in place of one that failed, with all that must be disclosed. */
export const offerShape = z.strictObject({
  forPart: partIdShape,
  part: partIdShape,
  /** What the part on offer was called when it was disclosed. */
  name: z.string(),
  rows: z.array(comparedRowShape),
  /** Rows of which nothing is known of either part. */
  notKnown: z.array(z.string()),
  afterwards: z.array(
    z.strictObject({
      says: z.string(),
      minutes: z.number(),
      priceMinor: z.number().nullable(),
      /** The shop's task that it is, once the shop does it: what was done is no longer to be done. */
      task: z.string().optional(),
    }),
  ),
  extras: z.array(z.strictObject({ what: z.string(), priceMinor: z.number() })),
  priceMinor: z.number(),
  taxPermille: z.number().optional(),
  /** Comes off the price when the old part goes back to its maker. */
  coreMinor: z.number().optional(),
  condition: z.enum(CONDITIONS),
  warrantyMonths: z.number(),
  whyNotSame: z.string(),
});
export type OfferedPart = Shaped<typeof offerShape>;

/** How an answer was given. No answer is not a yes. */
export const answerHowShape = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('counter'), signature: signatureShape }),
  z.strictObject({
    by: z.literal('phone'),
    at: epochMsShape,
    number: personalShape(z.string()),
    readBack: personalShape(z.string()),
    /** Why a number that is not on the sheet was theirs all the same. */
    otherNumber: personalShape(z.string()).optional(),
  }),
  z.strictObject({
    by: z.literal('writing'),
    at: epochMsShape,
    file: z.string().nullable(),
    words: personalShape(z.string()),
  }),
]);
export type AnswerHow = Shaped<typeof answerHowShape>;

export const answerShape = z.strictObject({
  options: z.array(z.string()),
  name: personalShape(z.string()),
  how: answerHowShape,
  /** Who of the shop heard it. */
  heardBy: z.string(),
  at: epochMsShape,
});
export type Answer = Shaped<typeof answerShape>;

export const tryShape = z.strictObject({ at: epochMsShape, how: z.enum(TRY_BY), result: z.enum(TRY_RESULTS) });

export const questionShape = z.strictObject({
  id: questionIdShape,
  kind: z.enum(QUESTION_KINDS),
  says: z.string(),
  options: z.array(questionOptionShape),
  /** Several options may be agreed to at once: a yes in part. */
  several: z.boolean().optional(),
  askedAt: epochMsShape,
  validUntil: epochMsShape,
  cameFrom: z.enum(STAGES),
  offer: offerShape.nullable(),
  tries: z.array(tryShape),
  answer: answerShape.nullable(),
  lapsed: z.boolean(),
  withdrawn: z.boolean(),
});
export type Question = Shaped<typeof questionShape>;

/** The limit, in minor units, after these were agreed to: the last one that is named, and on top what each yes in part raises it by. */
export const limitAfter = (limitMinor: number, agreed: readonly QuestionOption[]): number =>
  agreed.reduce((limit, { agrees }) => agrees.limitMinor ?? limit, limitMinor) +
  agreed.reduce((sum, { agrees }) => sum + (agrees.raisesMinor ?? 0), 0);

/** Does agreeing to it change the limit? */
export const movesLimit = ({ agrees }: QuestionOption): boolean =>
  agrees.limitMinor !== null || (agrees.raisesMinor ?? 0) > 0;

/** The options that were chosen; none while it is not answered. */
export const chosenOf = ({
  options,
  answer,
}: Pick<Question, 'options'> & { readonly answer: Pick<Answer, 'options'> | null }): readonly QuestionOption[] =>
  options.filter((option) => answer?.options.includes(option.id));

/**
 * In minor units: the limit said at the counter, then as each answer that still stands named or raised it.
 * @param answered In the order in which they were answered.
 */
export const limitByAnswers = (firstMinor: number, answered: readonly Question[]): number =>
  answered
    .filter((one) => one.answer && !one.withdrawn)
    .reduce((limit, one) => limitAfter(limit, chosenOf(one)), firstMinor);

/** Is the question still waiting for its answer? */
export const isOpen = (question: Question): boolean => !question.answer && !question.lapsed && !question.withdrawn;
