import type { LabelSize, PageSize, TagStock } from '../sizes.ts';
import type { TagGrid } from './tagGrid.ts';

/** Widths of a roll in millimetres: on a narrower one a code is too fine for a hand scanner. Common practice, no source. */
export const ROLL_MM = { least: 12, most: 120 } as const;
const PAGE_MM: Readonly<Record<PageSize, LabelSize>> = {
  A4: { widthMm: 210, heightMm: 297 },
  Letter: { widthMm: 215.9, heightMm: 279.4 },
};
/** A hang-tag with room for the hole: code, text below. */
const CELL: LabelSize = { widthMm: 38, heightMm: 36 };
/** Most office printers leave about this much of a page white. Common practice, no source. */
const WHITE_MM = 10;
/** Below the page of tags stands how they are hung. */
const NOTE_MM = 6;
const CODE_MM = 20;
const EDGE_MM = 1.5;
const TEXT_MM = 7;
const STACKED_MM = 14;
const STACKED_BELOW_MM = 24;

/** Is the text broken into its three groups, one below the other? */
export const isStacked = (size: LabelSize): boolean => size.widthMm < STACKED_BELOW_MM;

/** How large the code of a tag is, its white edge included, in millimetres. */
export const codeSide = (size: LabelSize): number => Math.min(CODE_MM, size.widthMm - 2 * EDGE_MM);

/** The size of one tag with nothing but its code and text. */
export function tagSize(stock: TagStock): LabelSize {
  if (stock.on !== 'roll') return CELL;
  const size = { widthMm: stock.widthMm, heightMm: 0 };
  return { ...size, heightMm: codeSide(size) + (isStacked(size) ? STACKED_MM : TEXT_MM) + 2 * EDGE_MM };
}

/** How tags lie on a sheet; null on a roll, where each is a page of its own. */
export function tagGrid(stock: TagStock): TagGrid | null {
  if (stock.on === 'roll') return null;
  const page = PAGE_MM[stock.on];
  const across = Math.floor((page.widthMm - 2 * WHITE_MM) / CELL.widthMm);
  const down = Math.floor((page.heightMm - 2 * WHITE_MM - NOTE_MM) / CELL.heightMm);
  return {
    page: stock.on,
    across,
    down,
    left: (page.widthMm - across * CELL.widthMm) / 2,
    top: WHITE_MM,
  };
}

/** The label of a part or machine with its lines: as wide as the roll; narrow ones are longer instead. */
export function labelSize(stock: TagStock | undefined): LabelSize {
  if (stock?.on !== 'roll') return { widthMm: 62, heightMm: 40 };
  return { widthMm: stock.widthMm, heightMm: stock.widthMm < 50 ? 62 : 40 };
}
