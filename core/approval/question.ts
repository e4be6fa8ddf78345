import type { PartId, QuestionId } from '../ids.ts';
import type { Personal } from '../journal/personal.ts';
import type { Stage } from '../stage.ts';
import type { EpochMs } from '../time.ts';
import type { ComparedRow } from './compare.ts';
import type { Signature } from './signature.ts';

/** What a question is about. */
export const QUESTION_KINDS = ['changed-finding', 'offer', 'data-first', 'spend', 'part', 'go-on', 'incident'] as const;
export type QuestionKind = (typeof QUESTION_KINDS)[number];

/** A thing or service with its price; its own tax rate where it has one. */
export type PricedItem = {
  readonly what: string;
  readonly priceMinor: number;
  readonly taxPermille?: number | undefined;
};

/** What takes days while tracing and is done by the owner's own word only: a part ordered to try, theirs sent out. */
export const DAYS_AWAY = ['order-to-try', 'send-out'] as const;
export type DaysAway = (typeof DAYS_AWAY)[number];

/** What agreeing to an option allows. Only what stands here is allowed by it. */
export type Agrees = {
  /** New limit for everything, in minor units; null leaves it. */
  readonly limitMinor: number | null;
  /** Raises the limit that holds by so much: what a yes in part comes to. It adds up over the options chosen. */
  readonly raisesMinor?: number | undefined;
  readonly items: readonly PricedItem[];
  /** Accepts the part on offer. */
  readonly accepts: boolean;
  readonly data: 'copy' | 'unplug' | 'leave' | null;
  readonly dead: { readonly part: PartId; readonly answer: 'back' | 'keep' | 'send' | 'scrap' | 'follow' } | null;
  /** Accepts what came for an order, at this price, in place of what was agreed before. */
  readonly order?: { readonly order: string; readonly priceMinor: number } | undefined;
  /** Allows what takes days while tracing. */
  readonly daysAway?: DaysAway | undefined;
  /** Goes on although it costs more than the machine is worth. */
  readonly beyondWorth?: true | undefined;
  /** Where the job goes on after this answer; `back` is where it came from. */
  readonly goesTo: Stage | 'back';
};

export type QuestionOption = { readonly id: string; readonly says: string; readonly agrees: Agrees };

/** A part on offer in place of one that failed, with all that must be disclosed. */
export type Offer = {
  readonly forPart: PartId;
  readonly part: PartId;
  /** What the part on offer was called when it was disclosed. */
  readonly name: string;
  readonly rows: readonly ComparedRow[];
  /** Rows of which nothing is known of either part. */
  readonly notKnown: readonly string[];
  readonly afterwards: readonly {
    readonly says: string;
    readonly minutes: number;
    readonly priceMinor: number | null;
  }[];
  readonly extras: readonly { readonly what: string; readonly priceMinor: number }[];
  readonly priceMinor: number;
  readonly taxPermille?: number | undefined;
  /** Comes off the price when the old part goes back to its maker. */
  readonly coreMinor?: number | undefined;
  readonly condition: 'new' | 'used' | 'refurbished';
  readonly warrantyMonths: number;
  readonly whyNotSame: string;
};

/** How an answer was given. No answer is not a yes. */
export type AnswerHow =
  | { readonly by: 'counter'; readonly signature: Signature }
  | {
      readonly by: 'phone';
      readonly at: EpochMs;
      readonly number: Personal<string>;
      readonly readBack: Personal<string>;
    }
  | { readonly by: 'writing'; readonly at: EpochMs; readonly file: string | null; readonly words: Personal<string> };

export type Answer = {
  readonly options: readonly string[];
  readonly name: Personal<string>;
  readonly how: AnswerHow;
  /** Who of the shop heard it. */
  readonly heardBy: string;
  readonly at: EpochMs;
};

export type Try = {
  readonly at: EpochMs;
  readonly how: 'phone' | 'mail' | 'message' | 'letter';
  readonly result: 'no-answer' | 'message-left' | 'sent' | 'reached';
};

export type Question = {
  readonly id: QuestionId;
  readonly kind: QuestionKind;
  readonly says: string;
  readonly options: readonly QuestionOption[];
  /** Several options may be agreed to at once: a yes in part. */
  readonly several?: boolean | undefined;
  readonly askedAt: EpochMs;
  readonly validUntil: EpochMs;
  readonly cameFrom: Stage;
  readonly offer: Offer | null;
  readonly tries: readonly Try[];
  readonly answer: Answer | null;
  readonly lapsed: boolean;
  readonly withdrawn: boolean;
};

/** The limit after these were agreed to: the last one that is named, and on top what each yes in part raises it by. */
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

/** The limit said at the counter, then as each answer that still stands named or raised it, in the order given. */
export const limitByAnswers = (firstMinor: number, questions: readonly Question[]): number =>
  questions
    .filter((one) => one.answer && !one.withdrawn)
    .toSorted((a, b) => (a.answer?.at ?? 0) - (b.answer?.at ?? 0))
    .reduce((limit, one) => limitAfter(limit, chosenOf(one)), firstMinor);

/** Is the question still waiting for its answer? */
export const isOpen = (question: Question): boolean => !question.answer && !question.lapsed && !question.withdrawn;
