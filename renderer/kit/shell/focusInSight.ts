import { type RefObject, useEffect } from 'react';

/** Keeps what has the keyboard's focus in sight when the pane it scrolls in becomes lower, unless it was scrolled away before. */
export function useFocusInSight(pane: RefObject<HTMLElement | null>, scrolls: boolean): void {
  useEffect(() => {
    const at = scrolls ? pane.current : null;
    if (!at) return;
    let before = at.getBoundingClientRect();
    const watch = new ResizeObserver(() => {
      const held = document.activeElement;
      if (held && held !== at && at.contains(held) && held.matches(':focus-visible')) {
        const { top, bottom } = held.getBoundingClientRect();
        if (top < before.bottom && bottom > before.top) held.scrollIntoView({ block: 'nearest' });
      }
      before = at.getBoundingClientRect();
    });
    watch.observe(at);
    return () => watch.disconnect();
  }, [pane, scrolls]);
}
