/** A stretch of the page that is never split. */
export type Slab = {
  readonly height: number;
  /** Stays on one page with what follows. */
  readonly keep?: boolean;
  readonly draw: (y: number) => void;
  /** The same, closer: what stands in for it where a page would else be turned for a row or two. */
  readonly tight?: { readonly height: number; readonly draw: (y: number) => void };
  /** Painted again at the top of a page that begins with this slab: a table's head. */
  readonly repeat?: { readonly height: number; readonly draw: (y: number) => void };
};

export type FlowColumn = { readonly top: number; readonly bottom: () => number; readonly turn: () => void };

/**
 * Sets slabs one below the other and turns the page where the next ones that belong together do not fit.
 * @returns where the last one ended.
 */
export function flow(slabs: readonly Slab[], column: FlowColumn, start: number): number {
  let y = start;
  for (let from = 0; from < slabs.length; ) {
    let to = from;
    while (to < slabs.length - 1 && slabs[to]?.keep) to++;
    const group = slabs.slice(from, to + 1);
    const height = heightOf(group);
    const whole = column.bottom() - column.top;
    if (y > column.top && y + height > column.bottom() && height <= whole) y = turned(group[0], column);
    for (const slab of group) {
      if (y > column.top && y + slab.height > column.bottom() + 0.01) y = turned(slab, column);
      slab.draw(y);
      y += slab.height;
    }
    from = to + 1;
  }
  return y;
}

function turned(slab: Slab | undefined, column: FlowColumn): number {
  column.turn();
  slab?.repeat?.draw(column.top);
  return column.top + (slab?.repeat?.height ?? 0);
}

export const heightOf = (slabs: readonly Slab[]) => slabs.reduce((sum, slab) => sum + slab.height, 0);
const nothing = () => {};
export const gap = (height: number, keep = false, tight = height): Slab => ({
  height,
  keep,
  draw: nothing,
  tight: { height: tight, draw: nothing },
});

/** The same slabs, each as close as it can be. */
export const tightened = (slabs: readonly Slab[]): readonly Slab[] => slabs.map((slab) => ({ ...slab, ...slab.tight }));

/** How many pages are turned for these, drawing nothing. */
export function turnsFor(
  slabs: readonly Slab[],
  column: { readonly top: number; readonly bottomOf: (page: number) => number },
  start: number,
): number {
  let page = 1;
  const unseen = slabs.map(({ height, keep, repeat }) => ({
    height,
    ...(keep && { keep }),
    draw: nothing,
    ...(repeat && { repeat: { height: repeat.height, draw: nothing } }),
  }));
  flow(unseen, { top: column.top, bottom: () => column.bottomOf(page), turn: () => void page++ }, start);
  return page - 1;
}
