import { isPaper, type Paper } from '../../../../core/papers/content.ts';
import { paperOf, type Reader } from '../../../../db/index.ts';
import { drawPaper } from '../../../papers/drawPaper.ts';
import { loadPaperFonts } from '../../../papers/fonts.ts';
import { type Stamps, stampsOn } from './stamps.ts';

export type IssuedPaper = {
  readonly content: Paper;
  readonly contentHash: string;
  readonly supersededBy: string | null;
};

/** A paper as it was issued; null when there is none of this number, or its keys were destroyed. */
export async function issuedPaper(read: Reader, number: string): Promise<IssuedPaper | null> {
  const row = await paperOf(read, number);
  if (!row) return null;
  const issued = (await read.entryAt(`paper:${row.kind}:${row.year}`, row.seq))?.body;
  const content = issued?.content.value ?? null;
  if (!issued || !isPaper(content)) return null;
  return {
    content,
    contentHash: issued.contentHash,
    supersededBy: row.superseded_by,
  };
}

let fonts: ReturnType<typeof loadPaperFonts> | undefined;

/** Draws an issued paper as it stands today: stamped where it was replaced, or where it is a copy of what was given out. */
export const drawIssued = (issued: IssuedPaper, as: { readonly copy: boolean }): Promise<Uint8Array<ArrayBuffer>> =>
  drawStamped(issued, stampsOn(issued, as));

/** Draws an issued paper: always the same bytes for the same content and stamps. */
export function drawStamped({ content, contentHash }: IssuedPaper, stamps: Stamps): Promise<Uint8Array<ArrayBuffer>> {
  fonts ??= loadPaperFonts();
  return drawPaper({ ...content, contentHash }, fonts, { stamps });
}
