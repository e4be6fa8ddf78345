import type {} from './pdfkitInside.ts';

/** A branch of the structure tree that is hung in where its first leaf is painted, so that order is reading order. */
export type Branch = {
  readonly branch: (role: string, options?: RoleOptions) => Branch;
  /** Paints a leaf of its own role. */
  readonly leaf: (role: string, options: RoleOptions, paint: () => void) => void;
  /** Paints a further stretch of this branch itself. */
  readonly more: (paint: () => void) => void;
};
export type RoleOptions = {
  readonly alt?: string;
  /** A name for what has no heading of its own, such as a table. */
  readonly title?: string;
  readonly scope?: 'Row' | 'Column';
  /** Columns that a cell goes over. */
  readonly span?: number;
  /** Left, top, right, bottom on the page, from its top left. */
  readonly bbox?: readonly [number, number, number, number];
};

export function structureRoot(doc: PDFKit.PDFDocument): Branch & { readonly end: () => void } {
  const root = doc.struct('Document');
  doc.addStructure(root);
  return { ...branchOf(doc, () => root), end: () => root.end() };
}

function branchOf(doc: PDFKit.PDFDocument, element: () => PDFKit.PDFStructureElement): Branch {
  return {
    branch: (role, options = {}) => {
      let made: PDFKit.PDFStructureElement | undefined;
      return branchOf(doc, () => {
        if (!made) {
          made = elementOf(doc, role, options);
          element().add(made);
        }
        return made;
      });
    },
    leaf: (role, options, paint) => {
      const leaf = elementOf(doc, role, options);
      element().add(leaf);
      leaf.add(paint);
    },
    more: (paint) => {
      element().add(paint);
    },
  };
}

function elementOf(doc: PDFKit.PDFDocument, role: string, options: RoleOptions): PDFKit.PDFStructureElement {
  const element = doc.struct(role, options);
  // pdfkit writes no ColSpan of its own; without it rows would be of unequal length.
  if (options.span) {
    const { data } = element.dictionary;
    data.A = { ...data.A, O: 'Table', ColSpan: options.span };
  }
  return element;
}
