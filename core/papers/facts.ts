import type { Money } from '../money/money.ts';
import type { EpochMs, Minutes } from '../time.ts';
import type { InkStrokes } from './content.ts';

/** A paper as another one names it. */
export type NamedPaper = { readonly named: string; readonly number: string; readonly issuedAt: EpochMs };

/** Facts that every paper takes. Names and addresses are plain texts, opened from the journal by the asker. */
export type CommonFacts = {
  readonly number: string;
  readonly issuedAt: EpochMs;
  /** Number and date of the paper that this one replaces. */
  readonly supersedes?: {
    readonly number: string;
    readonly issuedAt: EpochMs;
    /** It was signed, and stays in force for what this one does not change. */
    readonly signed?: true;
    /** What put it right before, and no longer counts. */
    readonly replaced?: string;
  };
  /** Short head of the journal's chain, the last one sealed: `7f3a 9c12 e0b4`. */
  readonly headShort: string;
  /** Earlier papers of the job that it goes on from. */
  readonly restsOn?: readonly NamedPaper[];
  /** The shop's own id. */
  readonly shopId?: string;
  readonly shop: ShopFacts;
  readonly owner: PersonFacts;
  readonly machine: NamedMachine;
  /** Text that the shop's local law asks for on this kind of paper; the shop fills it in, word for word. */
  readonly localText?: string;
  /** The job is free of charge: amounts say what it would cost. */
  readonly free?: boolean;
};

export type ShopFacts = {
  readonly name: string;
  /** Street and town, one line each. */
  readonly address: readonly string[];
  readonly phone?: string;
  readonly mail?: string;
  /** Registration number, where the law gives one. */
  readonly registration?: string;
};

export type PersonFacts = {
  readonly name: string;
  readonly address?: readonly string[];
  readonly phone?: string;
  readonly mail?: string;
};

export type NamedMachine = {
  readonly tag: string;
  /** What it is, in a few words: `desktop PC, mid tower, built to order by Fernhill Systems`. */
  readonly what: string;
  readonly maker?: string;
  readonly model?: string;
  readonly serial?: string;
};

/**
 * A signature given on the shop's own screen; without strokes the name was typed. Points may carry more than x and y
 * (a time, say): only the place is printed.
 */
export type SignatureFacts = {
  readonly who: string;
  readonly at: EpochMs;
  readonly drawn: DrawnStrokes | null;
  /** The signed content's SHA-256, its first twelve hex digits, in groups. */
  readonly content?: string;
  /** Given when a signature did not yet name the content it stands under. */
  readonly unbound?: true;
};
export type DrawnStrokes = Omit<InkStrokes, 'strokes'> & {
  readonly strokes: readonly (readonly (readonly [x: number, y: number, ...more: number[]])[])[];
};

/** How an answer was given. */
export type GivenHow =
  | { readonly how: 'at-the-counter'; readonly signature?: SignatureFacts }
  | { readonly how: 'by-phone'; readonly phone: string; readonly readBack?: string }
  | { readonly how: 'in-writing'; readonly words?: string };
/** Who said it, when, how, and who heard it. */
export type WordFacts = {
  readonly who: string;
  readonly at: EpochMs;
  readonly heardBy: string;
  readonly given: GivenHow;
};

export type PartCondition = 'new' | 'used' | 'refurbished';
export type ChargeFacts = { readonly what: string; readonly amount: Money };
/** One answer that can be given: what it is, its price (or none), and what goes with it. */
export type AnswerOptionFacts = {
  readonly title: string;
  readonly figure?: Money;
  readonly lines: readonly string[];
  readonly chosen?: boolean;
};

/** Minutes of hands-on work and price, as simulated: one in ten below P10, half below P50, nine in ten below P90. */
export type EstimateFacts = {
  readonly minutes: { readonly p10: Minutes; readonly p50: Minutes; readonly p90: Minutes };
  /** Work and parts together; tax as the shop's setting says. */
  readonly price: { readonly p10: Money; readonly p50: Money; readonly p90: Money };
  /** Chance of passing the owner's limit, 0 to 1. */
  readonly passesLimit?: number;
};

/** A thing that is not a part, with its count: `mains cord`, 1. */
export type ThingFacts = { readonly what: string; readonly count: number };
