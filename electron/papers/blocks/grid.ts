import type { Text } from '../../../core/papers/content.ts';
import type { TextLine } from '../breakLines.ts';
import { heightOf, type Slab } from '../flow.ts';
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

/** Lines of a row that stay together at its start and at its end; a row of no more than both is never split. */
const TOGETHER = 4;

/** From which to which line each stretch of a row goes. */
function stretchesOf(count: number): readonly (readonly [from: number, to: number])[] {
  if (count <= 2 * TOGETHER) return [[0, count]];
  const middle = Array.from(
    { length: count - 2 * TOGETHER },
    (_, index) => [TOGETHER + index, TOGETHER + index + 1] as const,
  );
  return [[0, TOGETHER], ...middle, [count - TOGETHER, count]];
}

/** A row with a thin line above it unless it is the first. A long one is split at its lines, never within one. */
export function rowSlabs(
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
): Slab[] {
  const row = table.branch('TR');
  const set = cells.map((cell, index) => {
    const track = at[index] ?? { x, width };
    const style = cell.style ?? STYLES.text;
    const indent = cell.indent ?? 0;
    const { role = 'TD', scope, span, before } = cell;
    const own = row.branch(role, { ...(scope ? { scope } : {}), ...(span ? { span } : {}) });
    const lines = pen.lines(cell.text, style, track.width - indent);
    return { cell, style, track, indent, lines, own, said: before ? own.branch('P') : own };
  });
  // Words of one row stand on one base line even where their sizes differ.
  const firstLine = Math.max(...set.map(({ style }) => style.line));
  const pad = options.pad ?? ROW_PAD;
  const padTop = options.first ? 0 : pad;
  const words = ({ track, indent, style, cell, said }: (typeof set)[number], lines: readonly TextLine[], y: number) =>
    said.more(() =>
      pen.write(lines, track.x + indent, y, style, cell.align === 'right' ? track.width - indent : undefined),
    );
  const stretches = stretchesOf(Math.max(...set.map(({ lines }) => lines.length)));
  return stretches.map(([from, to], index): Slab => {
    const [opens, closes] = [index === 0, index === stretches.length - 1];
    const tallest = Math.max(...set.map(({ lines, style }) => lines.slice(from, to).length * style.line));
    const above = opens ? padTop : 0;
    return {
      height: tallest + above + (closes ? pad : 0),
      ...(options.keep && closes ? { keep: true } : {}),
      draw: (y) => {
        if (opens && !options.first) pen.artifact(() => pen.rule(x, y, width));
        for (const one of set) {
          if (opens) one.cell.before?.(one.own, one.track.x, y + above);
          const lines = one.lines.slice(from, to);
          if (opens || lines.length > 0) words(one, lines, y + above + (opens ? (firstLine - one.style.line) / 2 : 0));
        }
        if (opens) options.artifactToo?.(y + above);
      },
    };
  });
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
  const slabs = rowSlabs(cells, at, table, site, { first: true, keep: true, ...(artifactToo ? { artifactToo } : {}) });
  const { pen } = site;
  const repeat = {
    height: heightOf(slabs),
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
  return { slabs, repeat };
}
