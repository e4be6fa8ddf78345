import { useSyncExternalStore } from 'react';

const listeners = new Set<() => void>();
let connected = false;

/** Says whether the change stream stands. */
export function setConnected(now: boolean): void {
  if (now === connected) return;
  connected = now;
  for (const listener of listeners) listener();
}

/** Whether this window hears the service: while it does not, what it shows may be old. */
export function useConnected(): boolean {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    () => connected,
  );
}
