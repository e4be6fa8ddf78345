import { useEffect, useRef } from 'react';
import { takesText } from './scan/retype.ts';

/**
 * Single keys of a room (B back, F far view, / find, ? what the marks mean): only while no field has the focus, never
 * with Ctrl, Alt or Meta, and not at all when the shop has switched them off.
 * @param keys what each key does, by the key's own name.
 */
export function useRoomKeys(keys: { readonly [key: string]: () => void }, on = true): void {
  const now = useRef(keys);
  now.current = keys;
  useEffect(() => {
    if (!on) return;
    const press = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey || event.repeat) return;
      if (takesText(document.activeElement)) return;
      const does = now.current[event.key] ?? now.current[event.key.toLowerCase()];
      if (!does) return;
      event.preventDefault();
      does();
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [on]);
}
