import { type PointerEvent as ReactPointerEvent, useEffect, useRef, useState } from 'react';
import type { InsidePart } from './model.ts';

export type Dragged = { readonly part: InsidePart; readonly x: number; readonly y: number };

/** px a finger may tremble before a press becomes a drag. */
const STARTS = 8;

/**
 * Drags a part from a pressed element to the nearest element under the pointer with a `data-drop`.
 * A press that does not travel stays a press; after a drag the click that follows is swallowed.
 */
export function useDrag(onDrop: (part: InsidePart, drop: string, x: number) => void) {
  const [dragged, setDragged] = useState<Dragged | null>(null);
  const press = useRef<{ part: InsidePart; x: number; y: number; moved: boolean } | null>(null);
  const swallow = useRef(false);
  const drop = useRef(onDrop);
  drop.current = onDrop;

  useEffect(() => {
    const move = (event: PointerEvent) => {
      const now = press.current;
      if (!now) return;
      if (!now.moved && Math.hypot(event.clientX - now.x, event.clientY - now.y) < STARTS) return;
      now.moved = true;
      setDragged({ part: now.part, x: event.clientX, y: event.clientY });
    };
    const up = (event: PointerEvent) => {
      const now = press.current;
      press.current = null;
      setDragged(null);
      if (!now?.moved) return;
      swallow.current = true;
      setTimeout(() => {
        swallow.current = false;
      }, 50);
      const target = document
        .elementsFromPoint(event.clientX, event.clientY)
        .map((element) => element.closest<HTMLElement>('[data-drop]'))
        .find((element) => element !== null);
      const to = target?.dataset.drop;
      if (to !== undefined) drop.current(now.part, to, event.clientX);
    };
    const stop = () => {
      press.current = null;
      setDragged(null);
    };
    window.addEventListener('pointermove', move);
    window.addEventListener('pointerup', up);
    window.addEventListener('pointercancel', stop);
    return () => {
      window.removeEventListener('pointermove', move);
      window.removeEventListener('pointerup', up);
      window.removeEventListener('pointercancel', stop);
    };
  }, []);

  return {
    dragged,
    /** Goes onto what can be dragged. */
    grip: (part: InsidePart | null) => ({
      onPointerDown: (event: ReactPointerEvent) => {
        if (part === null || event.button !== 0) return;
        if (event.target instanceof Element && event.target.hasPointerCapture(event.pointerId))
          event.target.releasePointerCapture(event.pointerId);
        press.current = { part, x: event.clientX, y: event.clientY, moved: false };
      },
    }),
    /** True right after a drag: the click belongs to it. */
    swallowed: () => swallow.current,
  };
}
