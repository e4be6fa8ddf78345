import type { Section } from '../../core/papers/content.ts';
import { blockSlabs } from './blocks/blockSlabs.ts';
import { gap, heightOf, type Slab } from './flow.ts';
import { LABEL_COLUMN, LABEL_GAP, RULE, STYLES } from './measures.ts';
import type { Pen } from './pen.ts';
import type { Branch } from './structure.ts';

const PAD_TOP = { usual: 6.2, tight: 4.2 };
const PAD_BOTTOM = { usual: 7.2, tight: 4.6 };
const BETWEEN = { usual: 5, tight: 3.4 };
const BETWEEN_PARAGRAPHS = { usual: 2, tight: 1 };
/** A section up to this high is not split. */
const SMALL = 150;

/** A section opens with a line; its label stands left of what it says, or above it. */
export function sectionSlabs(section: Section, pen: Pen, parent: Branch, x: number, width: number): Slab[] {
  const branch = parent.branch('Sect');
  const style = STYLES.label;
  const label = pen.lines(section.label, style, section.wide ? width : LABEL_COLUMN);
  const labelHeight = label.length * style.line;
  const inner = section.wide
    ? { x, width }
    : { x: x + LABEL_COLUMN + LABEL_GAP, width: width - LABEL_COLUMN - LABEL_GAP };
  const said = section.blocks.flatMap((block, index) => {
    const drawn = blockSlabs(block, { pen, branch, ...inner });
    // A paragraph leads over to what follows it, so it does not end a page.
    const leads = block.block === 'paragraph' && index < section.blocks.length - 1;
    const slabs = leads ? drawn.map((slab, at) => (at === drawn.length - 1 ? { ...slab, keep: true } : slab)) : drawn;
    if (index === 0) return slabs;
    const before = section.blocks[index - 1]?.block;
    const { usual, tight } = block.block === 'paragraph' && before === 'paragraph' ? BETWEEN_PARAGRAPHS : BETWEEN;
    return [gap(usual, true, tight), ...slabs];
  });
  const opening = (pad: number) => ({
    height: pad + (section.wide ? labelHeight + 3 : 0),
    draw: (y: number) => {
      pen.artifact(() => pen.rule(x, y, width, RULE));
      branch.leaf('H2', {}, () => pen.write(label, x, y + pad, style));
    },
  });
  const open: Slab = { ...opening(PAD_TOP.usual), keep: true, tight: opening(PAD_TOP.tight) };
  const missing = section.wide ? 0 : Math.max(0, labelHeight - heightOf(said));
  const close = gap(PAD_BOTTOM.usual + missing, false, PAD_BOTTOM.tight + missing);
  const whole = heightOf(said) <= SMALL;
  const last = said.length - 1;
  return [open, ...said.map((slab, index) => (whole || index === last ? { ...slab, keep: true } : slab)), close];
}
