// The same word as in the preload, which loads no other file.
const LOCKED = 'knowngood:locked';

/**
 * Hears from the app that the screen was locked, and when. In a browser nobody says so: a page that is hidden is no
 * locked screen, somebody may be at the bench with another window in front.
 * @returns what stops hearing.
 */
export function onScreenLock(locked: (at: number) => void): () => void {
  const hear = ({ source, origin, data }: MessageEvent<unknown>) => {
    if (source !== window || origin !== location.origin || !Array.isArray(data)) return;
    const [word, at]: readonly unknown[] = data;
    if (word === LOCKED && typeof at === 'number') locked(at);
  };
  window.addEventListener('message', hear);
  return () => window.removeEventListener('message', hear);
}
