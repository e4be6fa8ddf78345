/** The channel on which a window hears that the screen was locked, and when. */
export const LOCKED_CHANNEL = 'knowngood:locked';

type Monitor = {
  on(event: 'lock-screen', hear: () => void): unknown;
  on(event: 'suspend', hear: () => void): unknown;
};
type Window = { readonly webContents: { readonly send: (channel: string, at: number) => void } };

/**
 * Tells every window when the screen is locked or the computer goes to sleep. Electron hears of a lock on Windows and
 * macOS only, of sleep everywhere; a page in a browser hears of neither.
 */
export function tellOfLock(monitor: Monitor, windows: () => readonly Window[], clock: () => number): void {
  const tell = () => {
    for (const { webContents } of windows()) webContents.send(LOCKED_CHANNEL, clock());
  };
  monitor.on('lock-screen', tell);
  monitor.on('suspend', tell);
}
