import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What a drawn paper says of itself, and every word that stands on its pages, in the order it was painted. */
export type PaperRead = {
  readonly number: string;
  readonly contentHash: string;
  readonly shopName: string;
  readonly pages: readonly (readonly string[])[];
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
    const contentHash = /^sha256:([0-9a-f]{64})$/.exec(said('Keywords'))?.[1];
    if (number === undefined || contentHash === undefined) return null;
    const pages: string[][] = [];
    for (let page = 1; page <= doc.numPages; page++) {
      const { items } = await (await doc.getPage(page)).getTextContent();
      const text = items.map((item) => ('str' in item ? `${item.str}${item.hasEOL ? ' ' : ''}` : '')).join('');
      pages.push(
        text
          .normalize('NFC')
          .split(/\s+/u)
          .filter((word) => word !== ''),
      );
    }
    return { number, contentHash, shopName: said('Author'), pages };
  } catch {
    return null;
  } finally {
    await loading.destroy();
  }
}
