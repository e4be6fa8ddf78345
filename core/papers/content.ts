import type { PaperKindId } from '../text/paperWords.ts';
import type { EpochMs } from '../time.ts';
import type { LabelSize, PageSize } from './sizes.ts';
import type { TagGrid } from './tags/tagGrid.ts';

/**
 * What a paper says, as a tree of plain JSON values: every word, figure and mark, already in the owner's language,
 * and nothing of how it is drawn. The stored content, not the drawing, is what a paper's hash is taken over.
 */
export type Paper = Sheet | Labels;

/** Is this a paper's content as it was kept? Whether anything in it was changed since, its hash says. */
export const isPaper = (kept: unknown): kept is Paper =>
  typeof kept === 'object' && kept !== null && 'shape' in kept && (kept.shape === 'sheet' || kept.shape === 'labels');

type PaperBase = {
  readonly kind: PaperKindId;
  /** Unique in the shop: `26/0003`, `IR-2026-0113`. */
  readonly number: string;
  /** BCP 47 tag of the language the words are in. */
  readonly language: string;
  readonly title: string;
  readonly issuedAt: EpochMs;
  /** The last sealed head of the journal's chain, short; part of what is hashed. */
  readonly headShort: string;
  /** SHA-256 of the canonical JSON of this tree with this slot null; null until it is known. */
  readonly contentHash: string | null;
  readonly shopName: string;
  /** The shop's own id, by which a paper is known to be another shop's; not on papers of before it was written. */
  readonly shopId?: string;
};

/** A document of one or more pages. */
export type Sheet = PaperBase & {
  readonly shape: 'sheet';
  readonly pageSize: PageSize;
  readonly head: {
    /** Second lines under the title: what kind of paper, number, date; whose machine. */
    readonly meta: readonly Text[];
    readonly shop: readonly string[];
    readonly qr: QrCode | null;
  };
  /** Printed under the head when this paper replaces an earlier one. */
  readonly supersedes: string | null;
  /** The first three lines: what a lay person must know, if they read no further. */
  readonly lead: Text;
  readonly body: readonly Section[];
  /** Stands at the foot of page one, or of the page where the body ends. */
  readonly signing: { readonly on: 'page-one' | 'last-page'; readonly line: SigningLine } | null;
  /** The full record, from a page of its own. */
  readonly record: { readonly heading: string; readonly sections: readonly Section[] } | null;
  readonly foot: {
    /** With `{page}` and `{pages}`. */
    readonly pages: string;
    /** Said after the pages on page one. */
    readonly note: string;
    readonly record: string;
    readonly content: string;
    /** How to check it, below the foot of page one; not on papers of before. */
    readonly check?: string;
  };
};

/** One or more tags, each a small page. */
export type Labels = PaperBase & {
  readonly shape: 'labels';
  readonly size: LabelSize;
  /** Where several are printed on one sheet, to be cut. */
  readonly grid?: TagGrid;
  /** Stands below the tags of a sheet. */
  readonly note?: string;
  readonly labels: readonly Label[];
};
export type Label = {
  readonly qr: QrCode;
  /** The tag in groups, as one reads it aloud. */
  readonly tag: string;
  readonly mark: PartMark | null;
  readonly lines: readonly Text[];
};

/** A question and its answer; the label stands left of the blocks, or above them when `wide`. */
export type Section = { readonly label: string; readonly wide?: true; readonly blocks: readonly Block[] };

export type Text = string | readonly Run[];
export type Run = { readonly text: string; readonly strong?: true; readonly tag?: true };

export type Block =
  | Paragraph
  | List
  | FactTable
  | Table
  | Amounts
  | Ruler
  | ComparisonBlock
  | ConsentsBlock
  | Answers
  | Choices
  | SignatureBlock
  | SigningBlock;

export type Paragraph = { readonly block: 'paragraph'; readonly text: Text; readonly size?: 'note' };
export type List = { readonly block: 'list'; readonly items: readonly Text[] };
/** Names and values, two columns without a head. */
export type FactTable = {
  readonly block: 'facts';
  readonly rows: readonly { readonly name: string; readonly value: Text }[];
};

export type Column = {
  readonly head: string;
  readonly align?: 'right' /** Share of the width, relative. */;
  readonly share: number;
};
export type Table = {
  readonly block: 'table';
  /** Said to those who cannot see it. */
  readonly summary: string;
  readonly columns: readonly Column[];
  /** True: the first column holds a part's mark before its text. */
  readonly marks?: true;
  /** For long lists that are looked up rather than read. */
  readonly small?: true;
  readonly rows: readonly {
    readonly mark?: PartMark;
    readonly cells: readonly Text[];
    readonly strong?: true;
    /** A heading within the table: one cell over the whole width. */
    readonly over?: true;
  }[];
};

/** Lines of money; the last may be the total. */
export type Amounts = {
  readonly block: 'amounts';
  readonly summary: string;
  readonly rows: readonly { readonly what: Text; readonly amount: string; readonly total?: true }[];
};

/** Whose part it is and how it stands, drawn in one ink; `says` is the same in words. */
export type PartMark = {
  readonly whose: 'owner' | 'shop' | 'nobody' | 'unknown';
  readonly state?: 'suspect' | 'named' | 'dead';
  readonly says: string;
};

/** One scale for readings, money and time: a line with ticks, what is allowed or likely on it, and what was read. */
export type Ruler = {
  readonly block: 'ruler';
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly { readonly at: number; readonly label?: string; readonly half?: true }[];
  readonly spans: readonly {
    readonly kind: 'allowed' | 'likely';
    /** The side that has no end. */
    readonly open?: 'below' | 'above';
    readonly from: number;
    readonly to: number;
    readonly label: string;
  }[];
  readonly points: readonly { readonly at: number; readonly label: string; readonly kind: 'reading' | 'limit' }[];
  /** The whole ruler in words. */
  readonly says: string;
  /** Where the limit comes from, who read it, with what. */
  readonly source?: Text;
};

export const COMPARED_AS = ['worse', 'cannot-be-compared', 'equal', 'better'] as const;
export type ComparedAs = (typeof COMPARED_AS)[number];
export type ComparisonBlock = {
  readonly block: 'comparison';
  readonly summary: string;
  readonly columns: readonly [attribute: string, yours: string, offered: string, ruler: string, verdict: string];
  readonly rows: readonly {
    readonly attribute: string;
    readonly yours: string;
    readonly offered: string;
    readonly verdict: ComparedAs;
    readonly verdictSays: Text;
  }[];
};

/** One line asked and how it was answered; unanswered prints as such and counts as no. */
export type ConsentLine = {
  readonly asks: string;
  readonly answered: boolean;
  readonly answerSays: Text;
};
export type ConsentsBlock = {
  readonly block: 'consents';
  readonly summary: string;
  readonly columns: readonly [asked: string, answer: string];
  readonly lines: readonly ConsentLine[];
};

/** Answers to choose from, of equal size, none ticked beforehand; `chosen` once the answer is known. */
export type Answers = {
  readonly block: 'answers';
  readonly ticks: Ticks;
  readonly answers: readonly {
    readonly title: string;
    readonly figure: string;
    readonly lines: readonly Text[];
    readonly chosen: boolean;
  }[];
};
export type Choices = {
  readonly block: 'choices';
  readonly ticks: Ticks;
  readonly choices: readonly { readonly text: string; readonly chosen: boolean }[];
};

/** What an empty and a ticked box are called, for those who cannot see them. */
export type Ticks = { readonly open: string; readonly chosen: string };

/** Pen strokes as points in a field of the given size, top left 0, 0. */
export type InkStrokes = {
  readonly width: number;
  readonly height: number;
  readonly strokes: readonly (readonly (readonly [x: number, y: number])[])[];
};
/** A signature given: the mark, who, when, and what was signed. */
export type SignatureBlock = {
  readonly block: 'signature';
  /** Null where the name was typed; `typed` then says so. */
  readonly strokes: InkStrokes | null;
  readonly typed: string;
  readonly who: string;
  readonly when: string;
  readonly what: string;
  /** Which content was signed, by its hash; not on papers of before contents were bound. */
  readonly content?: string;
  readonly says: string;
};
/** Empty lines to be filled in by pen. */
export type SigningBlock = { readonly block: 'signing'; readonly lines: readonly string[] };
export type SigningLine = SigningBlock | SignatureBlock;

export type QrCode = { readonly text: string; readonly says: string };
