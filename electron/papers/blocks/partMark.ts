import type { PartMark } from '../../../core/papers/content.ts';
import { INK } from '../measures.ts';
import type { Pen } from '../pen.ts';
import type { Branch } from '../structure.ts';

/** 42 × 22 px at 150 dpi. */
export const MARK_WIDTH = 20.2;
export const MARK_HEIGHT = 10.6;
const OUTLINE = 1.1;
const OUTLINE_OURS = 1.3;
/** What is dead is struck past both sides. */
const PAST = 2.4;
const TEETH = 4;

/**
 * Draws whose part it is in one ink: plain outline the owner's, hatch the shop's, dots an empty place, gaps not known;
 * the lower edge torn when suspect or named, whole and struck twice when dead.
 */
export function paintMark(mark: PartMark, cell: Branch, pen: Pen, x: number, top: number): void {
  const { doc } = pen;
  const y = top + 2.2;
  const bbox = [x - PAST, y - PAST, x + MARK_WIDTH + PAST, y + MARK_HEIGHT + PAST] as const;
  cell.leaf('Figure', { alt: mark.says, bbox }, () => {
    doc.save();
    doc.strokeColor(INK).lineJoin('miter').lineCap('butt');
    const torn = mark.state === 'suspect' || mark.state === 'named';
    if (mark.whose === 'shop') {
      outline(doc, x, y, torn);
      doc.save();
      doc.clip();
      hatch(doc, x, y);
      doc.restore();
    }
    outline(doc, x, y, torn);
    doc.lineWidth(mark.whose === 'shop' ? OUTLINE_OURS : OUTLINE);
    if (mark.whose === 'nobody') doc.lineCap('round').dash(0.9, { space: 2.4 });
    if (mark.whose === 'unknown') doc.dash(MARK_WIDTH * 0.8, { space: 7 });
    doc.stroke().undash();
    if (mark.state === 'dead') {
      doc.lineWidth(OUTLINE);
      for (const up of [0, -2.6])
        doc
          .moveTo(x - PAST, y + 8.6 + up)
          .lineTo(x + MARK_WIDTH + PAST, y + 3.4 + up)
          .stroke();
    }
    doc.restore();
  });
}

function outline(doc: PDFKit.PDFDocument, x: number, y: number, torn: boolean): void {
  doc
    .moveTo(x, y)
    .lineTo(x + MARK_WIDTH, y)
    .lineTo(x + MARK_WIDTH, y + MARK_HEIGHT);
  if (torn) {
    const tooth = MARK_WIDTH / TEETH;
    for (let count = 0; count < TEETH; count++) {
      const right = x + MARK_WIDTH - count * tooth;
      doc.lineTo(right - tooth * (count % 2 ? 0.6 : 0.4), y + MARK_HEIGHT - 3.2).lineTo(right - tooth, y + MARK_HEIGHT);
    }
  } else doc.lineTo(x, y + MARK_HEIGHT);
  doc.closePath();
}

function hatch(doc: PDFKit.PDFDocument, x: number, y: number): void {
  doc.lineWidth(0.8);
  for (let at = -MARK_HEIGHT; at < MARK_WIDTH; at += 3.1)
    doc.moveTo(x + at, y + MARK_HEIGHT).lineTo(x + at + MARK_HEIGHT, y);
  doc.stroke();
}
