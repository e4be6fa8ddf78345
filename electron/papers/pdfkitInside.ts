/**
 * What is used of pdfkit, at the version the lock file holds, that its types leave out: how a font knows its letters, and
 * the dictionary that an element of the structure is written from.
 */
declare global {
  namespace PDFKit {
    interface PDFDocument {
      readonly _font: { readonly font: { hasGlyphForCodePoint(code: number): boolean } };
    }
    interface PDFStructureElement {
      readonly dictionary: { readonly data: { A?: Record<string, unknown> } };
    }
  }
}

export {};
