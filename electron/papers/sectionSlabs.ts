import type { Section } from '../../core/papers/content.ts';
import { blockSlabs } from './blocks/blockSlabs.ts';
import { gap, heightOf, type Slab } from './flow.ts';
import { LABEL_COLUMN, LABEL_GAP, RULE, STYLES } from './measures.ts';
import type { Pen } from './pen.ts';
import type { Branch } from './structure.ts';

const PAD_TOP = 6.2;
const PAD_BOTTOM = 7.2;
const BETWEEN = 5;
const BETWEEN_PARAGRAPHS = 2;
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
    return [gap(block.block === 'paragraph' && before === 'paragraph' ? BETWEEN_PARAGRAPHS : BETWEEN, true), ...slabs];
  });
  const open: Slab = {
    height: PAD_TOP + (section.wide ? labelHeight + 3 : 0),
    keep: true,
    draw: (y) => {
      pen.artifact(() => pen.rule(x, y, width, RULE));
      branch.leaf('H2', {}, () => pen.write(label, x, y + PAD_TOP, style));
    },
  };
  const missing = section.wide ? 0 : Math.max(0, labelHeight - heightOf(said));
  const close = gap(PAD_BOTTOM + missing);
  const whole = heightOf(said) <= SMALL;
  const last = said.length - 1;
  return [open, ...said.map((slab, index) => (whole || index === last ? { ...slab, keep: true } : slab)), close];
}
