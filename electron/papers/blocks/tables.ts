import type { Amounts, ConsentsBlock, FactTable, Table, Text } from '../../../core/papers/content.ts';
import type { Slab } from '../flow.ts';
import { INK, LABEL_COLUMN, STYLES, type Style } from '../measures.ts';
import { type Cell, headSlab, ROW_PAD, rowSlabs, tracks } from './grid.ts';
import { MARK_WIDTH, paintMark } from './partMark.ts';
import type { Site } from './site.ts';

const MARK_INDENT = MARK_WIDTH + 8;

const strong = (text: Text): Text =>
  typeof text === 'string' ? [{ text, strong: true }] : text.map((run) => ({ ...run, strong: true }));

export function tableSlabs(block: Table, site: Site): Slab[] {
  const table = site.branch.branch('Table', { title: block.summary });
  const at = tracks(
    block.columns.map((column) => column.share),
    site.x,
    site.width,
  );
  const style: Style = block.small ? { ...STYLES.note, ink: INK } : STYLES.text;
  const first = block.marks ? { indent: MARK_INDENT } : {};
  const head = headSlab(
    block.columns.map((column, index) => ({
      text: column.head,
      ...(column.align ? { align: column.align } : {}),
      ...(index === 0 ? first : {}),
    })),
    at,
    table,
    site,
  );
  return [
    ...head.slabs,
    ...block.rows.flatMap((row) =>
      rowSlabs(
        row.cells.map((text, index): Cell => {
          const align = row.over ? undefined : block.columns[index]?.align;
          const { mark } = row;
          return {
            text: row.strong ? strong(text) : text,
            style,
            ...(align ? { align } : {}),
            ...(index === 0 ? first : {}),
            ...(row.over ? { span: block.columns.length } : {}),
            ...(index === 0 && mark ? { before: (cell, x, y) => paintMark(mark, cell, site.pen, x, y) } : {}),
          };
        }),
        row.over ? [{ x: site.x, width: site.width }] : at,
        table,
        site,
        { pad: block.small ? 1.6 : ROW_PAD, ...(row.over ? { keep: true } : {}) },
      ).map((slab) => ({ repeat: head.repeat, ...slab })),
    ),
  ];
}

export function factSlabs(block: FactTable, site: Site): Slab[] {
  const table = site.branch.branch('Table');
  const at = tracks([LABEL_COLUMN * 1.35, site.width - LABEL_COLUMN * 1.35], site.x, site.width);
  return block.rows.flatMap((row, index) =>
    rowSlabs([{ text: row.name, role: 'TH', scope: 'Row', style: STYLES.note }, { text: row.value }], at, table, site, {
      first: index === 0,
    }),
  );
}

export function amountSlabs(block: Amounts, site: Site): Slab[] {
  const table = site.branch.branch('Table', { title: block.summary });
  const at = tracks([3, 1], site.x, site.width);
  return block.rows.flatMap((row, index) =>
    rowSlabs(
      [
        { text: row.total ? strong(row.what) : row.what, role: 'TH', scope: 'Row' },
        { text: row.total ? strong(row.amount) : row.amount, align: 'right' },
      ],
      at,
      table,
      site,
      { first: index === 0, keep: index === block.rows.length - 2 },
    ),
  );
}

/** Lines asked with their answers at the right; a line that was not answered says so. */
export function consentSlabs(block: ConsentsBlock, site: Site): Slab[] {
  const table = site.branch.branch('Table', { title: block.summary });
  const at = tracks([site.width - 104, 95], site.x, site.width);
  const head = headSlab(
    block.columns.map((text, index) => ({ text, ...(index === 1 ? { align: 'right' as const } : {}) })),
    at,
    table,
    site,
  );
  return [
    ...head.slabs,
    ...block.lines.flatMap((line) =>
      rowSlabs(
        [
          { text: line.asks, role: 'TH', scope: 'Row' },
          { text: line.answerSays, align: 'right' },
        ],
        at,
        table,
        site,
      ).map((slab) => ({ repeat: head.repeat, ...slab })),
    ),
  ];
}
