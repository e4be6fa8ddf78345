import type { Labels } from '../../../core/papers/content.ts';
import type { TagGrid } from '../../../core/papers/tags/tagGrid.ts';
import { INK, MM, PAGE, STYLES, THIN } from '../measures.ts';
import type { Pen } from '../pen.ts';
import type { Branch } from '../structure.ts';
import { drawBareTag } from './drawBareTag.ts';

const HOLE_MM = 2;
const HOLE_FROM_TOP_MM = 4;
const HEAD_MM = 7;

/** Tags on sheets to be cut along the lines, each with the place of its hole; below, how they are hung. */
export function drawTagGrid(paper: Labels, grid: TagGrid, pen: Pen, root: Branch): void {
  const each = grid.across * grid.down;
  for (const [index, label] of paper.labels.entries()) {
    const at = index % each;
    if (index > 0 && at === 0) pen.doc.addPage();
    if (at === 0) frame(paper, grid, pen, root);
    const left = (grid.left + (at % grid.across) * paper.size.widthMm) * MM;
    const top = (grid.top + Math.floor(at / grid.across) * paper.size.heightMm) * MM;
    const below = { ...paper.size, heightMm: paper.size.heightMm - HEAD_MM };
    drawBareTag(label, below, pen, root.branch('Sect'), { left, top: top + HEAD_MM * MM });
  }
}

function frame(paper: Labels, grid: TagGrid, pen: Pen, root: Branch): void {
  const { doc } = pen;
  const [width, height] = [paper.size.widthMm * MM, paper.size.heightMm * MM];
  const [left, top] = [grid.left * MM, grid.top * MM];
  const [right, foot] = [left + grid.across * width, top + grid.down * height];
  pen.artifact(() => {
    doc.lineWidth(THIN).strokeColor(INK).dash(2, { space: 2 });
    for (let column = 0; column <= grid.across; column++)
      doc.moveTo(left + column * width, top).lineTo(left + column * width, foot);
    for (let row = 0; row <= grid.down; row++) doc.moveTo(left, top + row * height).lineTo(right, top + row * height);
    doc.stroke().undash();
    for (let column = 0; column < grid.across; column++)
      for (let row = 0; row < grid.down; row++)
        doc.circle(left + (column + 0.5) * width, top + row * height + HOLE_FROM_TOP_MM * MM, HOLE_MM * MM);
    doc.lineWidth(THIN).strokeColor(INK).stroke();
  });
  if (paper.note === undefined) return;
  const note = pen.lines(paper.note, STYLES.note, right - left);
  root.leaf('P', {}, () => pen.write(note, left, Math.min(foot + 6, PAGE[grid.page][1] - 40), STYLES.note));
}
