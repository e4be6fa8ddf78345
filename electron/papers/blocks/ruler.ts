import type { Ruler } from '../../../core/papers/content.ts';
import type { Slab } from '../flow.ts';
import { INK, STYLES, type Style } from '../measures.ts';
import type { Pen } from '../pen.ts';
import { textSlabs } from './paragraph.ts';
import type { Site } from './site.ts';

const WORDS: Style = { ...STYLES.note, line: 12.5, ink: INK };
const STRONG: Style = { ...WORDS, cut: 'semibold' };
const ABOVE = 12;
const TICK = { long: 6.2, half: 3.4 };
const INSET = 8;

type Placed = { readonly text: string; readonly style: Style; readonly left: number; readonly row: number };

/** One scale: the line with its ticks, what is allowed or likely above it, what was read as a point or a bar. */
export function rulerSlabs(block: Ruler, site: Site): Slab[] {
  const { pen, branch, x, width } = site;
  const across = (at: number) => x + INSET + ((at - block.from) / (block.to - block.from)) * (width - 2 * INSET);
  const words = placed(block, across, site);
  const rows = 1 + Math.max(0, ...words.map((word) => word.row));
  const height = rows * WORDS.line + ABOVE + TICK.long + WORDS.line + 4;
  const figure: Slab = {
    height,
    ...(block.source === undefined ? {} : { keep: true }),
    draw: (top) => {
      branch.leaf('Figure', { alt: block.says, bbox: [x, top, x + width, top + height] }, () => {
        const line = top + rows * WORDS.line + ABOVE;
        paintScale(block, pen, across, line);
        for (const word of words) {
          const y = top + (rows - 1 - word.row) * WORDS.line;
          pen.write(pen.lines(word.text, word.style, width), word.left, y, word.style);
        }
      });
    },
  };
  return block.source === undefined ? [figure] : [figure, ...textSlabs(block.source, STYLES.note, 'P', site)];
}

/** Words above the line, each over what it names, in as many rows as they need not to touch. */
function placed(block: Ruler, across: (at: number) => number, { pen, x, width }: Site): Placed[] {
  const wanted = [
    ...block.points.map((point) => ({ text: point.label, style: STRONG, middle: across(point.at) })),
    ...block.spans.map((span) => ({
      text: span.label,
      style: WORDS,
      middle: (across(span.from) + across(span.to)) / 2,
    })),
  ];
  const taken: { left: number; right: number; row: number }[] = [];
  return wanted.map(({ text, style, middle }) => {
    const wide = pen.widthOf(text, style);
    const left = Math.min(Math.max(middle - wide / 2, x), x + width - wide);
    let row = 0;
    const touches = (other: { left: number; right: number; row: number }) =>
      other.row === row && left < other.right + 10 && other.left < left + wide + 10;
    while (taken.some(touches)) row++;
    taken.push({ left, right: left + wide, row });
    return { text, style, left, row };
  });
}

function paintScale(block: Ruler, pen: Pen, across: (at: number) => number, y: number): void {
  const { doc } = pen;
  doc.strokeColor(INK).fillColor(INK).lineCap('butt');
  doc.moveTo(across(block.from), y).lineTo(across(block.to), y).lineWidth(1).stroke();
  for (const tick of block.ticks) {
    doc.moveTo(across(tick.at), y).lineTo(across(tick.at), y + (tick.half ? TICK.half : TICK.long));
    doc.lineWidth(0.7).stroke();
    if (tick.label === undefined) continue;
    const lines = pen.lines(tick.label, WORDS, 200);
    pen.write(lines, across(tick.at) - (lines[0]?.width ?? 0) / 2, y + TICK.long, WORDS);
  }
  for (const span of block.spans) {
    const [left, right] = [across(span.from), across(span.to)];
    if (span.kind === 'likely')
      doc
        .moveTo(left, y - 5)
        .lineTo(right, y - 5)
        .lineWidth(4.2)
        .stroke();
    else {
      doc.moveTo(left, y - 9).lineTo(right, y - 9);
      if (span.open !== 'below') doc.moveTo(left, y - 4).lineTo(left, y - 9);
      if (span.open !== 'above') doc.moveTo(right, y - 4).lineTo(right, y - 9);
      doc.lineWidth(0.9).stroke();
    }
  }
  for (const point of block.points) {
    if (point.kind === 'reading') doc.circle(across(point.at), y - 4.6, 3.6).fill();
    else
      doc
        .moveTo(across(point.at), y + TICK.long)
        .lineTo(across(point.at), y - ABOVE)
        .lineWidth(1.8)
        .stroke();
  }
}
