import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';

export type Size = { readonly width: number; readonly height: number };

/** The inner size of an element, followed as it changes; `start` until it has been measured. */
export function useSize<E extends HTMLElement>(
  start: Size,
): { readonly ref: RefObject<E | null>; readonly size: Size } {
  const ref = useRef<E>(null);
  const [size, setSize] = useState(start);
  useFontsReady();
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = () => {
      const width = element.clientWidth;
      const height = element.clientHeight;
      setSize((old) => (old.width === width && old.height === height ? old : { width, height }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, size };
}

/** Draws once more when the product's own face has come: until then texts were measured in another one. */
function useFontsReady(): void {
  const [, draw] = useState(false);
  useEffect(() => {
    if (document.fonts.status === 'loaded') return;
    let gone = false;
    void document.fonts.ready.then(() => {
      if (!gone) draw(true);
    });
    return () => {
      gone = true;
    };
  }, []);
}
