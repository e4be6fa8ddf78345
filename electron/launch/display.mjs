/** Whether a window can be shown at all: on Linux a display server must be named. */
export const hasDisplay = (env = process.env, platform = process.platform) =>
  platform !== 'linux' || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);

/** Chromium's own sandbox refuses to run as root; as any other user it stays on. */
export const asRoot = process.getuid?.() === 0;
