import type { Label } from '../../../core/papers/content.ts';
import type { LabelSize } from '../../../core/papers/sizes.ts';
import { codeSide, isStacked } from '../../../core/papers/tags/stock.ts';
import { paintQr, quietZone } from '../blocks/qr.ts';
import { MM, STYLES, type Style } from '../measures.ts';
import type { Pen } from '../pen.ts';
import type { Branch } from '../structure.ts';

const SPACED = 0.045;

/** Code above, text below, both in the middle; the narrowest rolls take the text in its three groups. */
export function drawBareTag(
  label: Label,
  size: LabelSize,
  pen: Pen,
  branch: Branch,
  { left, top }: { readonly left: number; readonly top: number },
): void {
  const outer = codeSide(size) * MM;
  const width = size.widthMm * MM;
  const quiet = quietZone(label.qr, outer) * (outer / (outer + 2 * quietZone(label.qr, outer)));
  const side = outer - 2 * quiet;
  const text = isStacked(size) ? label.tag.split(' ') : [label.tag];
  const room = size.heightMm * MM - outer - 1.5 * MM;
  const style = fitting(text, width - 3 * MM, room, pen);
  const below = top + outer + (size.heightMm * MM - outer - text.length * style.line) / 2;
  branch.leaf('H1', {}, () => {
    for (const [index, line] of text.entries()) {
      const x = left + (width - pen.widthOf(line, style)) / 2;
      pen.write(pen.lines([{ text: line, tag: true }], style, 1e4), x, below + index * style.line, style);
    }
  });
  paintQr(label.qr, branch, pen, { x: left + (width - side) / 2, y: top + quiet, side });
}

function fitting(lines: readonly string[], width: number, height: number, pen: Pen): Style {
  let size = STYLES.title.size * 0.7;
  const styled = (): Style => ({ ...STYLES.title, size, line: size * 1.05, spaced: size * SPACED });
  const tooLarge = () =>
    lines.length * styled().line > height || lines.some((line) => pen.widthOf(line, styled()) > width);
  while (size > 6 && tooLarge()) size -= 0.5;
  return styled();
}
