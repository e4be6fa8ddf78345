import type { ComparedAs, ComparisonBlock } from '../../../core/papers/content.ts';
import type { Slab } from '../flow.ts';
import { INK, STYLES } from '../measures.ts';
import type { Pen } from '../pen.ts';
import { headSlab, rowSlabs, tracks } from './grid.ts';
import type { Site } from './site.ts';

const SHARES = [24, 24, 24, 14, 33];

/** Attribute by attribute; the words decide, the small scale beside them only repeats them. */
export function comparisonSlabs(block: ComparisonBlock, site: Site): Slab[] {
  const { pen } = site;
  const table = site.branch.branch('Table', { title: block.summary });
  const all = tracks(SHARES, site.x, site.width);
  const at = all.filter((_, index) => index !== 3);
  const scale = all[3] ?? { x: site.x, width: 0 };
  const [attribute, yours, offered, ruler, verdict] = block.columns;
  const scaleHead = (y: number) =>
    pen.artifact(() => {
      const style = STYLES.note;
      const [left = '', right = ''] = ruler.split('|');
      pen.write(pen.lines(left, style, 80), scale.x - 4, y, style);
      const lines = pen.lines(right, style, 80);
      pen.write(lines, scale.x + scale.width + 4 - (lines[0]?.width ?? 0), y, style);
    });
  const head = headSlab(
    [attribute, yours, offered, verdict].map((text) => ({ text })),
    at,
    table,
    site,
    scaleHead,
  );
  return [
    ...head.slabs,
    ...block.rows.flatMap((row) =>
      rowSlabs(
        [
          { text: row.attribute, role: 'TH' as const, scope: 'Row' as const, style: STYLES.label },
          { text: row.yours },
          { text: row.offered },
          { text: row.verdictSays },
        ],
        at,
        table,
        site,
        {
          artifactToo: (y) =>
            pen.artifact(() => paintVerdict(row.verdict, pen, scale.x, y + STYLES.text.line / 2, scale.width)),
        },
      ).map((slab) => ({ repeat: head.repeat, ...slab })),
    ),
  ];
}

const WHERE = { worse: 0, equal: 0.5, better: 1, 'cannot-be-compared': 0.5 } as const satisfies Record<
  ComparedAs,
  number
>;

function paintVerdict(verdict: ComparedAs, { doc }: Pen, x: number, y: number, width: number): void {
  doc.strokeColor(INK).fillColor(INK).lineWidth(0.7).lineCap('butt');
  doc.moveTo(x, y).lineTo(x + width, y);
  for (const at of [0, 0.5, 1]) {
    const reach = at === 0.5 ? 4 : 2.8;
    doc.moveTo(x + at * width, y - reach).lineTo(x + at * width, y + reach);
  }
  doc.stroke();
  const middle = x + WHERE[verdict] * width;
  if (verdict === 'cannot-be-compared') {
    doc.circle(middle, y, 3.1).fillAndStroke('#FFFFFF', INK);
    doc.fillColor(INK);
  } else doc.circle(middle, y, 3.1).fill();
}
