import { paperOf, type Reader } from '../../../../db/index.ts';
import { type PaperRead, readPaper } from '../../../papers/readPaper.ts';
import { drawIssued, issuedPaper } from './papers.ts';

/** What a paper in hand is, by what this shop issued under its number. */
export type PaperVerdict =
  | { readonly is: 'another-shop'; readonly number: string }
  | { readonly is: 'erased'; readonly number: string }
  | { readonly is: 'genuine'; readonly number: string; readonly replacedBy: string | null }
  /** Its words are those that were issued, and its file is not the one that is drawn today: its pictures are not compared. */
  | { readonly is: 'same-words'; readonly number: string; readonly replacedBy: string | null }
  | {
      readonly is: 'altered';
      readonly number: string;
      readonly page: number;
      readonly stands: string;
      readonly issued: string;
    };

/** Words said around the first that differs, so that one finds the place. */
const AROUND = 4;

/**
 * Checks a paper's file against the content that was kept when it was issued: what stands on its pages is compared with
 * the paper drawn from the journal; equal bytes are the short way. Nothing is written.
 */
export async function checkPaper(read: Reader, bytes: Uint8Array, inHand: PaperRead): Promise<PaperVerdict> {
  const { number } = inHand;
  if ((await paperOf(read, number)) === null) return { is: 'another-shop', number };
  const issued = await issuedPaper(read, number);
  if (!issued) return { is: 'erased', number };
  if (inHand.shopName !== issued.content.shopName) return { is: 'another-shop', number };
  const drawn = await drawIssued(issued);
  const replacedBy = issued.supersededBy;
  if (Buffer.from(drawn).equals(Buffer.from(bytes))) return { is: 'genuine', number, replacedBy };
  const ours = await readPaper(drawn);
  const place = ours && firstDifference(inHand.pages, ours.pages);
  if (place) return { is: 'altered', number, ...place };
  if (inHand.contentHash !== issued.contentHash)
    return { is: 'altered', number, page: 1, stands: inHand.contentHash, issued: issued.contentHash };
  return { is: 'same-words', number, replacedBy };
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

function firstDifference(inHand: readonly (readonly string[])[], ours: readonly (readonly string[])[]) {
  for (let page = 0; page < Math.max(inHand.length, ours.length); page++) {
    const [theirs, own] = [inHand[page] ?? [], ours[page] ?? []];
    for (let at = 0; at < Math.max(theirs.length, own.length); at++) {
      if (theirs[at] === own[at]) continue;
      const around = (words: readonly string[]) => words.slice(Math.max(0, at - AROUND), at + AROUND).join(' ');
      return { page: page + 1, stands: around(theirs), issued: around(own) };
    }
  }
  return null;
}
