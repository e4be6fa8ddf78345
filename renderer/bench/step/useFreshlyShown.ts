import { useEffect, useRef } from 'react';

/** As long as a hand on its way to a key that was there before needs to stop, ms: about a reaction. Chosen, no source. */
const ON_ITS_WAY = 400;

/** Did what is shown change so lately that a press still meant what stood there before? */
export function useFreshlyShown(what: string): () => boolean {
  const since = useRef(Number.NEGATIVE_INFINITY);
  const shown = useRef(what);
  useEffect(() => {
    if (shown.current === what) return;
    shown.current = what;
    since.current = performance.now();
  }, [what]);
  return () => performance.now() - since.current < ON_ITS_WAY;
}
