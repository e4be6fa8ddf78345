import PDFDocument from 'pdfkit';
import type { Paper } from '../../core/papers/content.ts';
import { drawLabels } from './drawLabels.ts';
import { drawSheet } from './drawSheet.ts';
import type { PaperFonts } from './fonts.ts';
import { MM, PAGE } from './measures.ts';
import { escapeMetadata } from './metadata.ts';
import { takePen } from './pen.ts';
import { structureRoot } from './structure.ts';

/** What a kept paper is written as. PDF/A-1b is for the one validator that can be had; papers are PDF/A-2a. */
export type Subset = 'PDF/A-2a' | 'PDF/A-1b';

/** No standard font may get in: they cannot be embedded. Null says so; the library's types leave it out. */
const none: unknown = null;
const NO_FONT = none as string;

/** How it is drawn: what as, and what is stamped over it, which is none of its content. */
export type DrawnAs = { readonly subset?: Subset; readonly stamps?: readonly string[] };

/**
 * Draws a paper as tagged PDF. The same content and fonts give the same bytes: nothing in it comes from the clock,
 * the machine or chance.
 */
export async function drawPaper(
  paper: Paper,
  fonts: PaperFonts,
  { subset = 'PDF/A-2a', stamps = [] }: DrawnAs = {},
): Promise<Uint8Array<ArrayBuffer>> {
  const size = pageOf(paper);
  const doc = new PDFDocument({
    size,
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    font: NO_FONT,
    pdfVersion: subset === 'PDF/A-1b' ? '1.4' : '1.7',
    subset,
    tagged: true,
    lang: paper.language,
    displayTitle: true,
    info: {
      Title: `${paper.title} · ${paper.number}`,
      Author: paper.shopName,
      Creator: 'Knowngood',
      ...(paper.contentHash ? { Keywords: keywords(paper.contentHash, paper.shopId) } : {}),
      CreationDate: new Date(paper.issuedAt),
    },
  });
  escapeMetadata(doc);
  doc.registerFont('regular', fonts.regular);
  doc.registerFont('semibold', fonts.semibold);
  const bytes = collected(doc);
  const pen = takePen(doc);
  doc.addPage();
  const root = structureRoot(doc);
  if (paper.shape === 'sheet') drawSheet(paper, pen, root, stamps);
  else drawLabels(paper, pen, root);
  root.end();
  doc.end();
  return bytes;
}

const keywords = (hash: string, shop: string | undefined): string =>
  shop === undefined ? `sha256:${hash}` : `sha256:${hash} shop:${shop}`;

function pageOf(paper: Paper): [number, number] {
  if (paper.shape === 'sheet') return [...PAGE[paper.pageSize]];
  return paper.grid ? [...PAGE[paper.grid.page]] : [paper.size.widthMm * MM, paper.size.heightMm * MM];
}

function collected(doc: PDFKit.PDFDocument): Promise<Uint8Array<ArrayBuffer>> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    doc.on('error', reject);
  });
}
