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
  return block.items.flatMap((item) => {
    const row = list.branch('LI');
    const slabs = textSlabs(item, style, 'LBody', { pen, branch: row, x: x + INDENT, width: width - INDENT });
    const [first, ...rest] = slabs;
    const last = slabs.length - 1;
    const marked = first && {
      ...first,
      draw: (y: number) => {
        row.leaf('Lbl', {}, () => pen.write(pen.lines('–', style, INDENT), x, y, style));
        first.draw(y);
      },
    };
    return [...(marked ? [marked] : []), ...rest].map((slab, at) =>
      at === last ? { ...slab, height: slab.height + 2 } : slab,
    );
  });
}
