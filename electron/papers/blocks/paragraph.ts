import type { List, Paragraph, Text } from '../../../core/papers/content.ts';
import type { Slab } from '../flow.ts';
import { STYLES, type Style } from '../measures.ts';
import type { Site } from './site.ts';

/** Lines at the end and at the start of a page that stay together when a paragraph is split. */
const TOGETHER = 3;

export function paragraphSlabs(block: Paragraph, site: Site): Slab[] {
  return textSlabs(block.text, block.size === 'note' ? STYLES.note : STYLES.text, 'P', site);
}

/** A text as slabs of lines: short ones whole, long ones split so that no line stands alone. */
export function textSlabs(text: Text, style: Style, role: string, { pen, branch, x, width }: Site): Slab[] {
  const lines = pen.lines(text, style, width);
  const own = branch.branch(role);
  const stretches = lines.length <= 2 * TOGETHER ? [lines] : split(lines);
  return stretches.map((stretch) => ({
    height: stretch.length * style.line,
    draw: (y) => own.more(() => pen.write(stretch, x, y, style)),
  }));
}

function split<T>(lines: readonly T[]): T[][] {
  const middle = lines.slice(TOGETHER, -TOGETHER).map((line) => [line]);
  return [lines.slice(0, TOGETHER), ...middle, lines.slice(-TOGETHER)];
}

const INDENT = 11;

export function listSlabs(block: List, { pen, branch, x, width }: Site): Slab[] {
  const style = STYLES.text;
  const list = branch.branch('L');
  return block.items.map((item) => {
    const lines = pen.lines(item, style, width - INDENT);
    return {
      height: lines.length * style.line + 2,
      draw: (y) => {
        const row = list.branch('LI');
        row.leaf('Lbl', {}, () => pen.write(pen.lines('–', style, INDENT), x, y, style));
        row.leaf('LBody', {}, () => pen.write(lines, x + INDENT, y, style));
      },
    };
  });
}
