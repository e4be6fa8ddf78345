import type { Answers, Choices, Text, Ticks } from '../../../core/papers/content.ts';
import type { TextLine } from '../breakLines.ts';
import { gap, type Slab } from '../flow.ts';
import { INK, STYLES, type Style } from '../measures.ts';
import type { Pen } from '../pen.ts';
import type { Branch } from '../structure.ts';
import { tracks } from './grid.ts';
import { textSlabs } from './paragraph.ts';
import type { Site } from './site.ts';

/** More answers than this, or taller ones, stand one below the other: a figure is never broken. */
const MOST_ABREAST = 4;
const TALLEST = 320;

const BOX = 11;
const PAD = 9;

/** A box to be ticked: is it, and what it says read aloud either way. */
type Tick = { readonly chosen: boolean; readonly ticks: Ticks };

function paintTick({ chosen, ticks }: Tick, branch: Branch, { doc }: Pen, x: number, y: number): void {
  branch.leaf('Figure', { alt: chosen ? ticks.chosen : ticks.open, bbox: [x, y, x + BOX, y + BOX] }, () => {
    doc.strokeColor(INK).lineWidth(0.9).lineCap('butt').rect(x, y, BOX, BOX).stroke();
    if (!chosen) return;
    const [near, far] = [2.2, BOX - 2.2];
    doc
      .lineWidth(1.6)
      .moveTo(x + near, y + near)
      .lineTo(x + far, y + far);
    doc
      .moveTo(x + near, y + far)
      .lineTo(x + far, y + near)
      .stroke();
  });
}

type Stack = readonly { readonly lines: readonly TextLine[]; readonly style: Style }[];
const heightOf = (stack: Stack) => stack.reduce((sum, { lines, style }) => sum + lines.length * style.line, 0);

/** Answers in fields of one size, side by side: no answer looks like the better one. */
export function answerSlabs(block: Answers, { pen, branch, x, width }: Site): Slab[] {
  const each = width / block.answers.length;
  const stacks = block.answers.map(({ title, figure, lines }): Stack => {
    const set = (text: Parameters<Pen['lines']>[0], style: Style) => ({
      lines: pen.lines(text, style, each - 2 * PAD),
      style,
    });
    return [
      set(title, STYLES.answer),
      ...(figure === '' ? [] : [set(figure, STYLES.figure)]),
      ...lines.map((line) => set(line, STYLES.text)),
    ];
  });
  const height = Math.max(...stacks.map(heightOf)) + BOX + 2.6 * PAD;
  if (block.answers.length > MOST_ABREAST || height > TALLEST) return stackedAnswers(block, { pen, branch, x, width });
  return [
    {
      height: height + 5,
      draw: (y) => {
        pen.artifact(() => {
          pen.doc.strokeColor(INK).lineWidth(0.9).rect(x, y, width, height).stroke();
          for (let at = 1; at < stacks.length; at++)
            pen.doc
              .moveTo(x + at * each, y)
              .lineTo(x + at * each, y + height)
              .stroke();
        });
        const list = branch.branch('L');
        for (const [index, stack] of stacks.entries()) {
          const body = list.branch('LI').branch('LBody');
          const left = x + index * each + PAD;
          paintTick({ chosen: block.answers[index]?.chosen ?? false, ticks: block.ticks }, body, pen, left, y + PAD);
          let top = y + PAD + BOX + 0.5 * PAD;
          for (const { lines, style } of stack) {
            const at = top;
            body.leaf('P', {}, () => pen.write(lines, left, at, style));
            top += lines.length * style.line;
          }
        }
      },
    },
  ];
}

/** Answers one below the other over the whole width, each as long as it is; none looks like the better one. */
function stackedAnswers(block: Answers, { pen, branch, x, width }: Site): Slab[] {
  const list = branch.branch('L');
  const indent = BOX + PAD;
  return block.answers.flatMap(({ title, figure, lines, chosen }) => {
    const body = list.branch('LI').branch('LBody');
    const site = { pen, branch: body, x: x + indent, width: width - indent };
    const text = (said: Text, style: Style) => textSlabs(said, style, 'P', site);
    const slabs = [
      ...text(title, STYLES.answer),
      ...(figure === '' ? [] : text(figure, STYLES.figure)),
      ...lines.flatMap((line) => text(line, STYLES.text)),
    ];
    const opening: Slab = {
      height: PAD / 2,
      keep: true,
      draw: (y) => {
        pen.artifact(() => pen.rule(x, y, width));
        paintTick({ chosen, ticks: block.ticks }, body, pen, x, y + PAD / 2 + 3);
      },
    };
    return [opening, ...slabs, gap(PAD / 2)];
  });
}

/** Short answers in one line each, wrapped to as many rows as they need. */
export function choiceSlabs(block: Choices, { pen, branch, x, width }: Site): Slab[] {
  const style = STYLES.text;
  const room = BOX + 6;
  const gap = 18;
  const list = branch.branch('L');
  const rows: { text: string; chosen: boolean; left: number; lines: readonly TextLine[] }[][] = [[]];
  let left = x;
  for (const choice of block.choices) {
    const lines = pen.lines(choice.text, style, width - room);
    const wide = room + Math.max(...lines.map((line) => line.width));
    if (left > x && left + wide > x + width) {
      rows.push([]);
      left = x;
    }
    rows[rows.length - 1]?.push({ ...choice, left, lines });
    left += wide + gap;
  }
  return rows.map((row) => ({
    height: Math.max(...row.map(({ lines }) => lines.length)) * style.line + 2,
    draw: (y) => {
      for (const { text: _, chosen, left: at, lines } of row) {
        const item = list.branch('LI');
        const lbl = item.branch('Lbl');
        paintTick({ chosen, ticks: block.ticks }, lbl, pen, at, y + (style.line - BOX) / 2);
        item.leaf('LBody', {}, () => pen.write(lines, at + room, y, style));
      }
    },
  }));
}

/** As many equal fields as there are lines, for a pen. */
export const fields = (count: number, x: number, width: number) =>
  tracks(
    Array.from({ length: count }, () => 1),
    x,
    width,
  );
