import { type KeyboardEvent, useState } from 'react';

const STEPS: { readonly [key: string]: number } = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 };

export type Roving = {
  /** Spread onto each item: one stop for Tab, arrows between. */
  readonly item: (id: string) => {
    readonly tabIndex: 0 | -1;
    readonly 'data-rove': string;
    readonly onFocus: () => void;
  };
  /** Goes onto the element around the items. */
  readonly onKeyDown: (event: KeyboardEvent<HTMLElement>) => void;
};

/**
 * One Tab stop for a group of many: arrows, Home and End go between its items.
 * @param move answers another item for a key where "next" and "before" are not enough (rows, bands).
 */
export function useRoving(
  ids: readonly string[],
  move?: (from: string, key: string) => string | undefined,
  start?: string,
): Roving {
  const [at, setAt] = useState<string | undefined>(start);
  const current =
    at !== undefined && ids.includes(at) ? at : start !== undefined && ids.includes(start) ? start : ids[0];
  return {
    item: (id) => ({ tabIndex: id === current ? 0 : -1, 'data-rove': id, onFocus: () => setAt(id) }),
    onKeyDown: (event) => {
      if (event.ctrlKey || event.altKey || event.metaKey || current === undefined) return;
      const here = ids.indexOf(current);
      const step = STEPS[event.key];
      const to =
        move?.(current, event.key) ??
        (event.key === 'Home'
          ? ids[0]
          : event.key === 'End'
            ? ids.at(-1)
            : step === undefined
              ? undefined
              : ids[here + step]);
      if (to === undefined) return;
      event.preventDefault();
      setAt(to);
      const within = event.currentTarget;
      requestAnimationFrame(() => within.querySelector<HTMLElement>(`[data-rove="${CSS.escape(to)}"]`)?.focus());
    },
  };
}
