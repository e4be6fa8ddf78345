import type { Label, Labels } from '../../core/papers/content.ts';
import { MARK_HEIGHT, MARK_WIDTH, paintMark } from './blocks/partMark.ts';
import { paintQr, quietZone } from './blocks/qr.ts';
import { MM, STYLES, type Style } from './measures.ts';
import type { Pen } from './pen.ts';
import type { Branch } from './structure.ts';
import { drawBareTag } from './tags/drawBareTag.ts';
import { drawTagGrid } from './tags/drawTagGrid.ts';

const EDGE = 3 * MM;
const QR_SIDE = 20 * MM;
const NARROW_MM = 50;
const WORDS: Style = { ...STYLES.text, size: 9.5, line: 12 };

/** Draws each tag on a page of its own: the code, the tag in groups, and what it hangs on. */
export function drawLabels(paper: Labels, pen: Pen, root: Branch): void {
  if (paper.grid) {
    drawTagGrid(paper, paper.grid, pen, root);
    return;
  }
  for (const [index, label] of paper.labels.entries()) {
    if (index > 0) pen.doc.addPage();
    const branch = root.branch('Sect');
    if (label.lines.length === 0 && !label.mark)
      drawBareTag(label, paper.size, pen, branch, { left: 0, top: 1.5 * MM });
    else drawLabel(label, paper, pen, branch);
  }
}

function drawLabel(label: Label, paper: Labels, pen: Pen, branch: Branch): void {
  const width = paper.size.widthMm * MM - 2 * EDGE;
  const height = paper.size.heightMm * MM - 2 * EDGE;
  const tag: Style = { ...STYLES.title, line: 24, ...fitting(label.tag, width, pen) };
  branch.leaf('H1', {}, () => pen.write(pen.lines([{ text: label.tag, tag: true }], tag, 1e4), EDGE, EDGE - 3, tag));
  const top = EDGE + tag.line + 1;
  const most = paper.size.widthMm < NARROW_MM ? width * 0.8 : width * 0.4;
  const side = Math.min(QR_SIDE, height - tag.line - 8, most);
  const quiet = quietZone(label.qr, side);
  const right = paper.size.widthMm * MM - Math.max(EDGE, quiet);
  paintQr(label.qr, branch, pen, { x: right - side, y: top + quiet / 2, side });
  // On a narrow roll the words stand below the code, over the whole width.
  const below = paper.size.widthMm < NARROW_MM;
  const room = below ? width : right - side - quiet - EDGE;
  let y = below ? top + side + quiet + 2 : top;
  if (label.mark) {
    paintMark(label.mark, branch, pen, EDGE + 1, y);
    const says = pen.lines([{ text: label.mark.says, strong: true }], WORDS, room - MARK_WIDTH - 6);
    branch.leaf('P', {}, () => pen.write(says, EDGE + MARK_WIDTH + 7, y + 1.5, WORDS));
    y += Math.max(MARK_HEIGHT, says.length * WORDS.line) + 5;
  }
  for (const text of label.lines) {
    const lines = pen
      .lines(text, WORDS, room)
      .slice(0, Math.max(0, Math.floor((EDGE + height - y) / WORDS.line + 0.01)));
    if (lines.length === 0) break;
    const at = y;
    branch.leaf('P', {}, () => pen.write(lines, EDGE, at, WORDS));
    y += lines.length * WORDS.line;
  }
}

/** As large as the width allows, and never larger than the title of a paper. */
function fitting(text: string, width: number, pen: Pen): { readonly size: number; readonly spaced: number } {
  let size = STYLES.title.size;
  while (size > 8 && pen.widthOf(text, { ...STYLES.title, size, spaced: size * 0.045 }) > width) size -= 0.5;
  return { size, spaced: size * 0.045 };
}
