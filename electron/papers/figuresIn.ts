import { OPS, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A drawn figure: its pen movements in order, and where each went, as shares of the figure's own width and height. */
export type FigureRead = { readonly moves: string; readonly points: readonly number[] };

/** What is painted on a page beside words. */
export type Painted = {
  readonly figures: readonly FigureRead[];
  /** How often something was painted that belongs to no part of the paper: over it, say, after it was issued. */
  readonly strays: number;
};

/** Numbers that follow a pen movement in a path: to, line, curve, curve of the second order, close. */
const NUMBERS = [2, 2, 6, 4, 0] as const;
const PAINTS: ReadonlySet<number> = new Set([
  OPS.constructPath,
  OPS.showText,
  OPS.showSpacedText,
  OPS.paintImageXObject,
  OPS.paintInlineImageXObject,
  OPS.paintImageMaskXObject,
  OPS.paintFormXObjectBegin,
  OPS.shadingFill,
]);

/** Reads what is drawn on a page: each figure by itself, wherever it stands and however large. */
export async function paintedOn(page: PDFPageProxy): Promise<Painted> {
  const { fnArray, argsArray } = await page.getOperatorList();
  const annotations = await page.getAnnotations();
  const figures: FigureRead[] = [];
  const open: string[] = [];
  let strays = annotations.length;
  let path: number[] | null = null;
  for (const [index, fn] of fnArray.entries()) {
    const args: unknown = argsArray[index];
    if (fn === OPS.beginMarkedContent || fn === OPS.beginMarkedContentProps) {
      const [tag]: readonly unknown[] = Array.isArray(args) ? args : [];
      open.push(String(tag));
      if (tag === 'Figure') path = [];
    } else if (fn === OPS.endMarkedContent) {
      if (open.pop() === 'Figure' && path) {
        figures.push(figureOf(path));
        path = null;
      }
    } else if (PAINTS.has(fn)) {
      if (open.length === 0) strays += 1;
      if (fn === OPS.constructPath && path) path.push(...numbersIn(args));
      else if (path) strays += 1;
    }
  }
  return { figures, strays };
}

/** All numbers of a path: pen movements, each followed by where it goes. */
function numbersIn(args: unknown): readonly number[] {
  const [, paths]: readonly unknown[] = Array.isArray(args) ? args : [];
  return (Array.isArray(paths) ? paths : []).flatMap((one) => (one instanceof Float32Array ? [...one] : []));
}

function figureOf(path: readonly number[]): FigureRead {
  const moves: number[] = [];
  const points: number[] = [];
  for (let at = 0; at < path.length; ) {
    const move = path[at] ?? 0;
    const numbers = NUMBERS[move] ?? 0;
    moves.push(move);
    points.push(...path.slice(at + 1, at + 1 + numbers));
    at += 1 + numbers;
  }
  const [across, down] = [0, 1].map((axis) => spanOf(points.filter((_, index) => index % 2 === axis)));
  const share = (value: number, { least, size }: { readonly least: number; readonly size: number }) =>
    size === 0 ? 0 : (value - least) / size;
  return {
    moves: moves.join(''),
    points: points.map((value, index) => share(value, (index % 2 === 0 ? across : down) ?? { least: 0, size: 0 })),
  };
}

function spanOf(values: readonly number[]): { readonly least: number; readonly size: number } {
  const least = values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const most = values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  return values.length === 0 ? { least: 0, size: 0 } : { least, size: most - least };
}

/** Points are written to the page with three decimals: a figure of a centimetre is the same within a thousandth. */
const SAME_WITHIN = 0.002;

/** Are two figures the same drawing, at whatever place and size? */
export const isSameFigure = (a: FigureRead, b: FigureRead): boolean =>
  a.moves === b.moves && a.points.every((value, index) => Math.abs(value - (b.points[index] ?? 2)) <= SAME_WITHIN);
