import { paperOf, type Reader } from '../../../../db/index.ts';
import { isSameFigure } from '../../../papers/figuresIn.ts';
import { type PaperRead, readPaper } from '../../../papers/readPaper.ts';
import { drawStamped, type IssuedPaper, issuedPaper } from './papers.ts';
import { waysStamped } from './stamps.ts';

/** What a paper in hand is, by what this shop issued under its number. */
export type PaperVerdict =
  | { readonly is: 'another-shop'; readonly number: string }
  | { readonly is: 'erased'; readonly number: string }
  | { readonly is: 'genuine'; readonly number: string; readonly replacedBy: string | null }
  | ({ readonly is: 'altered'; readonly number: string } & Difference)
  /** Its words are those that were issued, and a picture or mark on this page is not; or something was painted over it. */
  | { readonly is: 'picture-altered'; readonly number: string; readonly page: number }
  | { readonly is: 'painted-over'; readonly number: string; readonly page: number };

type Difference = { readonly page: number; readonly stands: string; readonly issued: string };
type Found =
  | null
  | ({ readonly is: 'altered' } & Difference)
  | { readonly is: 'picture-altered' | 'painted-over'; readonly page: number };

/** Words said around the first that differs, so that one finds the place. */
const AROUND = 4;

/** A paper's file, its bytes and what was read of it. */
export type InHand = { readonly bytes: Uint8Array; readonly paper: PaperRead };

/**
 * Checks a paper's file against the content that was kept when it was issued: its words in their order, its pictures
 * and marks, wherever on a page the layout of that day put them. Equal bytes are the short way. Nothing is written.
 */
export async function checkPaper(read: Reader, { bytes, paper }: InHand, shopId: string): Promise<PaperVerdict> {
  const { number } = paper;
  if (paper.shopId !== null && paper.shopId !== shopId) return { is: 'another-shop', number };
  if ((await paperOf(read, number)) === null) return { is: 'another-shop', number };
  const issued = await issuedPaper(read, number);
  if (!issued) return { is: 'erased', number };
  if (paper.shopName !== issued.content.shopName) return { is: 'another-shop', number };
  const found = await whatDiffers({ bytes, paper }, issued);
  if (found) return { number, ...found };
  if (paper.contentHash !== issued.contentHash)
    return { is: 'altered', number, page: 1, stands: paper.contentHash, issued: issued.contentHash };
  return { is: 'genuine', number, replacedBy: issued.supersededBy };
}

/** Checks a number and the short content hash printed beside it, as typed from a paper in hand. */
export async function checkTyped(read: Reader, number: string, content: string): Promise<PaperVerdict> {
  const row = await paperOf(read, number);
  if (row === null) return { is: 'another-shop', number };
  const issued = await issuedPaper(read, number);
  if (!issued) return { is: 'erased', number };
  const typed = content.replace(/[^0-9a-f]/gi, '').toLowerCase();
  const kept = issued.contentHash.slice(0, SHORT_HASH);
  return typed === kept
    ? { is: 'genuine', number, replacedBy: issued.supersededBy }
    : { is: 'altered', number, page: 1, stands: typed, issued: kept };
}

/** Hex digits of the content's hash that stand in a paper's foot. */
const SHORT_HASH = 12;

/** Compared with each way in which it may have left the shop, as issued first; what differs is said of that one. */
async function whatDiffers({ bytes, paper }: InHand, issued: IssuedPaper): Promise<Found> {
  let first: Found = null;
  for (const [at, stamps] of waysStamped(issued).entries()) {
    const drawn = await drawStamped(issued, stamps);
    if (Buffer.from(drawn).equals(Buffer.from(bytes))) return null;
    const ours = await readPaper(drawn);
    const found = ours && (wordsDiffer(paper, ours) ?? picturesDiffer(paper, ours));
    if (found === null) return null;
    if (at === 0) first = found;
  }
  return first;
}

type Word = { readonly word: string; readonly page: number };

const wordsOf = ({ pages }: PaperRead): readonly Word[] =>
  pages.flatMap(({ words }, index) => words.map((word) => ({ word, page: index + 1 })));

function wordsDiffer(inHand: PaperRead, ours: PaperRead): Found {
  const [theirs, own] = [wordsOf(inHand), wordsOf(ours)];
  const samePages = inHand.pages.every(({ words }, at) => words.length === ours.pages[at]?.words.length);
  // Feet count the pages: they are the same where the pages are.
  const [theirFeet, ownFeet] =
    samePages && inHand.pages.length === ours.pages.length ? [feetOf(inHand), feetOf(ours)] : [];
  return firstDifference(theirs, own) ?? firstDifference(theirFeet ?? [], ownFeet ?? []);
}

const feetOf = ({ pages }: PaperRead): readonly Word[] =>
  pages.flatMap(({ foot }, index) => foot.map((word) => ({ word, page: index + 1 })));

function firstDifference(theirs: readonly Word[], own: readonly Word[]): Found {
  for (let at = 0; at < Math.max(theirs.length, own.length); at++) {
    const [word, kept] = [theirs[at], own[at]];
    if (word?.word === kept?.word) continue;
    const around = (words: readonly Word[]) =>
      words
        .slice(Math.max(0, at - AROUND), at + AROUND)
        .map((one) => one.word)
        .join(' ');
    return { is: 'altered', page: (word ?? kept)?.page ?? 1, stands: around(theirs), issued: around(own) };
  }
  return null;
}

/** The page of the first picture or mark that is another one than issued, or on which something was painted over. */
function picturesDiffer(inHand: PaperRead, ours: PaperRead): Found {
  const over = inHand.pages.findIndex(({ strays }) => strays > 0);
  if (over >= 0) return { is: 'painted-over', page: over + 1 };
  const [theirs, own] = [inHand, ours].map(({ pages }) =>
    pages.flatMap(({ figures }, index) => figures.map((figure) => ({ figure, page: index + 1 }))),
  );
  for (let at = 0; at < Math.max(theirs?.length ?? 0, own?.length ?? 0); at++) {
    const [one, kept] = [theirs?.[at], own?.[at]];
    if (one && kept && isSameFigure(one.figure, kept.figure)) continue;
    return { is: 'picture-altered', page: (one ?? kept)?.page ?? 1 };
  }
  return null;
}
