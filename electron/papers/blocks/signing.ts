import type { InkStrokes, SignatureBlock, SigningBlock, SigningLine } from '../../../core/papers/content.ts';
import type { Slab } from '../flow.ts';
import { INK, MM, RULE, STYLES } from '../measures.ts';
import { fields } from './answers.ts';
import { textSlabs } from './paragraph.ts';
import type { Site } from './site.ts';

const FIELD = { width: 64 * MM, height: 17 * MM };
const PEN_ROOM = 12 * MM;
/** Lines of what was signed that stand beside a mark. */
const MOST_BESIDE = 6;

export function signingSlabs(block: SigningLine, site: Site): Slab[] {
  if (block.block === 'signing') return [linesSlab(block, site)];
  const { pen, width } = site;
  const beside = pen.lines(block.what, STYLES.text, width - FIELD.width - 5 * MM);
  if (beside.length <= MOST_BESIDE) return [signatureSlab(block, site)];
  // What is too long to stand beside the mark stands above it, over as many pages as it takes.
  return [
    ...textSlabs(block.what, STYLES.text, 'P', site).map((slab) => ({ ...slab, keep: true })),
    signatureSlab({ ...block, what: '' }, site),
  ];
}

/** Room and lines for a pen, each with what goes on it. */
function linesSlab(block: SigningBlock, { pen, branch, x, width }: Site): Slab {
  const style = STYLES.note;
  const at = fields(block.lines.length, x, width);
  const set = block.lines.map((text, index) => pen.lines(text, style, at[index]?.width ?? width));
  const height = PEN_ROOM + 3 + Math.max(...set.map((lines) => lines.length)) * style.line;
  return {
    height,
    draw: (y) => {
      for (const [index, lines] of set.entries()) {
        const field = at[index] ?? { x, width };
        pen.artifact(() => pen.rule(field.x, y + PEN_ROOM, field.width, RULE));
        branch.leaf('P', {}, () => pen.write(lines, field.x, y + PEN_ROOM + 3, style));
      }
    },
  };
}

/** A signature as it was drawn, above its line; beside it who, when and what was signed. */
function signatureSlab(block: SignatureBlock, { pen, branch, x, width }: Site): Slab {
  const style = STYLES.note;
  const beside = x + FIELD.width + 5 * MM;
  const what = pen.lines(block.what, STYLES.text, x + width - beside);
  const who = pen.lines([{ text: block.who, strong: true }, { text: `, ${block.when}` }], style, x + width - beside);
  const bound = block.content === undefined ? [] : pen.lines(block.content, style, x + width - beside);
  const words = what.length * STYLES.text.line + (who.length + bound.length) * style.line;
  const height = Math.max(FIELD.height + 4, words + 4);
  return {
    height,
    draw: (y) => {
      const line = y + height - 4;
      pen.artifact(() => pen.rule(x, line, FIELD.width, RULE));
      const { strokes } = block;
      if (strokes) {
        const bbox = [x, line - FIELD.height, x + FIELD.width, line] as const;
        branch.leaf('Figure', { alt: block.says, bbox }, () => paintStrokes(strokes, pen.doc, x, line - FIELD.height));
      } else {
        const typed = pen.lines([{ text: block.who, strong: true }, { text: `, ${block.typed}` }], style, FIELD.width);
        branch.leaf('P', {}, () => pen.write(typed, x, line - 2 - typed.length * style.line, style));
      }
      const top = line - words + 2;
      branch.leaf('P', {}, () => pen.write(what, beside, top, STYLES.text));
      const below = top + what.length * STYLES.text.line;
      branch.leaf('P', {}, () => pen.write(who, beside, below, style));
      if (bound.length > 0)
        branch.leaf('P', {}, () => pen.write(bound, beside, below + who.length * style.line, style));
    },
  };
}

function paintStrokes(drawn: InkStrokes, doc: PDFKit.PDFDocument, x: number, y: number): void {
  const scale = Math.min(FIELD.width / drawn.width, FIELD.height / drawn.height);
  doc.save().strokeColor(INK).fillColor(INK).lineWidth(1.1).lineCap('round').lineJoin('round');
  for (const stroke of drawn.strokes) {
    for (const [index, [px, py]] of stroke.entries()) {
      const [ax, ay] = [x + px * scale, y + py * scale];
      if (index === 0) doc.moveTo(ax, ay);
      else doc.lineTo(ax, ay);
    }
    const [first] = stroke;
    // A dot of the pen has no length to stroke.
    if (stroke.length === 1 && first) doc.circle(x + first[0] * scale, y + first[1] * scale, 0.7).fill();
    else if (stroke.length > 1) doc.stroke();
  }
  doc.restore();
}
