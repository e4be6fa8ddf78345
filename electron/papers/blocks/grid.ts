import type { Text } from '../../../core/papers/content.ts';
import type { Slab } from '../flow.ts';
import { STYLES, type Style } from '../measures.ts';
import type { Branch } from '../structure.ts';
import type { Site } from './site.ts';

/** One cell of a row. What `before` paints stands in the cell's own indent. */
export type Cell = {
  readonly text: Text;
  readonly style?: Style;
  readonly align?: 'right';
  readonly role?: 'TH' | 'TD';
  readonly scope?: 'Row' | 'Column';
  readonly indent?: number;
  /** Columns that the cell goes over. */
  readonly span?: number;
  readonly before?: (cell: Branch, x: number, y: number) => void;
};
export type Track = { readonly x: number; readonly width: number };

/** Space above and below the words of a row. */
export const ROW_PAD = 3;
const GUTTER = 9;

/** Columns side by side, sharing the width; a gutter between them. */
export function tracks(shares: readonly number[], x: number, width: number): Track[] {
  const whole = shares.reduce((sum, share) => sum + share, 0);
  const room = width - GUTTER * (shares.length - 1);
  let at = x;
  return shares.map((share) => {
    const track = { x: at, width: (room * share) / whole };
    at += track.width + GUTTER;
    return track;
  });
}

/** A row that is never split, with a thin line above it unless it is the first. */
export function rowSlab(
  cells: readonly Cell[],
  at: readonly Track[],
  table: Branch,
  { pen, x, width }: Site,
  options: {
    readonly first?: boolean;
    readonly keep?: boolean;
    readonly pad?: number;
    readonly artifactToo?: (y: number) => void;
  } = {},
): Slab {
  const set = cells.map((cell, index) => {
    const track = at[index] ?? { x, width };
    const style = cell.style ?? STYLES.text;
    const indent = cell.indent ?? 0;
    return { cell, style, track, indent, lines: pen.lines(cell.text, style, track.width - indent) };
  });
  const tallest = Math.max(...set.map(({ lines, style }) => lines.length * style.line));
  // Words of one row stand on one base line even where their sizes differ.
  const firstLine = Math.max(...set.map(({ style }) => style.line));
  const pad = options.pad ?? ROW_PAD;
  const padTop = options.first ? 0 : pad;
  const words = (one: (typeof set)[number], y: number) =>
    pen.write(
      one.lines,
      one.track.x + one.indent,
      y,
      one.style,
      one.cell.align === 'right' ? one.track.width - one.indent : undefined,
    );
  return {
    height: tallest + padTop + pad,
    ...(options.keep ? { keep: true } : {}),
    draw: (y) => {
      if (!options.first) pen.artifact(() => pen.rule(x, y, width));
      const row = table.branch('TR');
      for (const one of set) {
        const { role = 'TD', scope, span, before } = one.cell;
        const roleOptions = { ...(scope ? { scope } : {}), ...(span ? { span } : {}) };
        const top = y + padTop + (firstLine - one.style.line) / 2;
        if (before) {
          const cell = row.branch(role, roleOptions);
          before(cell, one.track.x, y + padTop);
          cell.leaf('P', {}, () => words(one, top));
        } else row.leaf(role, roleOptions, () => words(one, top));
      }
      options.artifactToo?.(y + padTop);
    },
  };
}

/** A head row and the same again as an artifact, for pages that go on with the table. */
export function headSlab(
  heads: readonly Cell[],
  at: readonly Track[],
  table: Branch,
  site: Site,
  artifactToo?: (y: number) => void,
) {
  const cells = heads.map((head) => ({ style: STYLES.note, ...head, role: 'TH' as const, scope: 'Column' as const }));
  const slab = rowSlab(cells, at, table, site, { first: true, keep: true, ...(artifactToo ? { artifactToo } : {}) });
  const { pen } = site;
  const repeat = {
    height: slab.height,
    draw: (y: number) => {
      pen.artifact(() => {
        for (const [index, cell] of cells.entries()) {
          const track = at[index];
          if (!track) continue;
          const lines = pen.lines(cell.text, cell.style, track.width);
          pen.write(
            lines,
            track.x,
            y + (STYLES.text.line - cell.style.line) / 2,
            cell.style,
            cell.align === 'right' ? track.width : undefined,
          );
        }
      });
      artifactToo?.(y);
    },
  };
  return { slab, repeat };
}
