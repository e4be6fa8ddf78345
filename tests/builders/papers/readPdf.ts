import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type StructNode = {
  readonly role?: string;
  readonly alt?: string;
  readonly scope?: string;
  readonly lang?: string;
  readonly children?: readonly StructNode[];
  readonly type?: string;
  readonly id?: string;
};
export type ReadPdf = {
  readonly pages: number;
  /** Text of each page, one blank wherever there is any. */
  readonly text: readonly string[];
  readonly trees: readonly StructNode[];
  /** All tagged text in the order of the structure tree: what is read aloud. */
  readonly aloud: string;
  readonly info: { readonly [key: string]: unknown };
  readonly xmp: { readonly title: unknown; readonly creator: unknown; readonly part: unknown };
  readonly marked: boolean;
  readonly showsTitle: boolean;
};

/** Reads a PDF with a reader that had no part in writing it (pdf.js). */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const loading = getDocument({ data: bytes.slice(), verbosity: 0 });
  const doc = await loading.promise;
  const aloud: string[] = [];
  const text: string[] = [];
  const trees: StructNode[] = [];
  for (let number = 1; number <= doc.numPages; number++) {
    const page = await doc.getPage(number);
    const content = await page.getTextContent();
    text.push(
      plain(content.items.map((item) => ('str' in item ? `${item.str}${item.hasEOL ? ' ' : ''}` : '')).join('')),
    );
    const tree = (await page.getStructTree()) as StructNode;
    trees.push(tree);
    const said = textByMark((await page.getTextContent({ includeMarkedContent: true })).items as readonly MarkedItem[]);
    for (const node of nodes(tree)) if (node.type === 'content') aloud.push(plain(said.get(node.id ?? '') ?? ''));
  }
  const { info, metadata } = await doc.getMetadata();
  const mark = entries(await doc.getMarkInfo());
  const viewer = entries(await doc.getViewerPreferences());
  const read: ReadPdf = {
    pages: doc.numPages,
    text,
    trees,
    aloud: plain(aloud.join(' ')),
    info: info as Record<string, unknown>,
    xmp: { title: metadata?.get('dc:title'), creator: metadata?.get('dc:creator'), part: metadata?.get('pdfaid:part') },
    marked: mark.Marked === true,
    showsTitle: viewer.DisplayDocTitle === true,
  };
  await loading.destroy();
  return read;
}

type MarkedItem = { readonly type?: string; readonly id?: string; readonly str?: string; readonly hasEOL?: boolean };

/** Text of each marked stretch of a page, by the id that the structure tree knows it by. */
function textByMark(items: readonly MarkedItem[]): ReadonlyMap<string, string> {
  const said = new Map<string, string>();
  const open: (string | undefined)[] = [];
  for (const item of items) {
    if (item.type?.startsWith('beginMarkedContent')) open.push(item.id);
    else if (item.type === 'endMarkedContent') open.pop();
    else {
      const id = open.findLast((one) => one !== undefined);
      if (id) said.set(id, `${said.get(id) ?? ''}${item.str ?? ''}${item.hasEOL ? ' ' : ''}`);
    }
  }
  return said;
}

const entries = (of: unknown): Record<string, unknown> =>
  of instanceof Map ? Object.fromEntries(of) : ((of ?? {}) as Record<string, unknown>);

export const plain = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[\s\u00a0\u202f]+/g, ' ')
    .trim();

/** Every node of a tree, parents before children. */
export function nodes(tree: StructNode): StructNode[] {
  return [tree, ...(tree.children ?? []).flatMap(nodes)];
}
