import { getDocument, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { type FigureRead, paintedOn } from './figuresIn.ts';

/** A page as it was read: its words in the order they were painted, those of its foot apart, and its figures. */
export type PageRead = {
  readonly words: readonly string[];
  /** What stands on the page and is none of its content: feet, heads that are repeated. */
  readonly foot: readonly string[];
  readonly figures: readonly FigureRead[];
  readonly strays: number;
};

/** What a drawn paper says of itself, and all that stands on its pages. */
export type PaperRead = {
  readonly number: string;
  readonly contentHash: string;
  readonly shopName: string;
  /** The shop that issued it; null on papers of before it was written into them. */
  readonly shopId: string | null;
  readonly pages: readonly PageRead[];
};

/** Reads a PDF as a paper of this app; null where it is no PDF that can be read, or no paper of this app. */
export async function readPaper(bytes: Uint8Array): Promise<PaperRead | null> {
  const loading = getDocument({ data: bytes.slice(), verbosity: 0 });
  try {
    const doc = await loading.promise;
    const { info } = await doc.getMetadata();
    const said = (name: string): string => {
      const value: unknown = name in info ? Object.entries(info).find(([key]) => key === name)?.[1] : '';
      return typeof value === 'string' ? value : '';
    };
    if (said('Creator') !== 'Knowngood') return null;
    const number = / · (\S+)$/.exec(said('Title'))?.[1];
    const [, contentHash, shopId] = /^sha256:([0-9a-f]{64})(?: shop:(\S+))?$/.exec(said('Keywords')) ?? [];
    if (number === undefined || contentHash === undefined) return null;
    const pages: PageRead[] = [];
    for (let page = 1; page <= doc.numPages; page++) pages.push(await pageOf(await doc.getPage(page)));
    return { number, contentHash, shopName: said('Author'), shopId: shopId ?? null, pages };
  } catch {
    return null;
  } finally {
    await loading.destroy();
  }
}

async function pageOf(page: PDFPageProxy): Promise<PageRead> {
  const { items } = await page.getTextContent({ includeMarkedContent: true });
  const open: string[] = [];
  const said = { words: '', foot: '' };
  for (const item of items) {
    if ('str' in item) said[open.includes('Artifact') ? 'foot' : 'words'] += `${item.str}${item.hasEOL ? ' ' : ''}`;
    else if (item.type === 'endMarkedContent') open.pop();
    else open.push('tag' in item ? String(item.tag) : '');
  }
  return { words: wordsOf(said.words), foot: wordsOf(said.foot), ...(await paintedOn(page)) };
}

const wordsOf = (text: string): readonly string[] =>
  text
    .normalize('NFC')
    .split(/\s+/u)
    .filter((word) => word !== '');
