import { useEffect, useState } from 'react';

/** The present moment in ms, renewed every so many ms: for clocks that run on screen. */
export function useNow(every = 1000): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), every);
    return () => clearInterval(timer);
  }, [every]);
  return now;
}
