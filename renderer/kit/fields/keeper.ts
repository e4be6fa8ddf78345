/** Where drafts are kept; the room hands in one that asks the service. Values are JSON text. */
export type DraftStore = {
  readonly save: (key: string, text: string) => void | Promise<void>;
  readonly load: (key: string) => Promise<string | null>;
  readonly drop: (key: string) => void | Promise<void>;
};
export type DraftKeeper = {
  /** Takes what is on the sheet now; kept at the latest `most` ms after it was typed. */
  readonly take: (text: string) => void;
  /** Keeps at once what is not kept yet: the window closes. */
  readonly flush: () => void;
  /** It could not be kept: it is taken to be unkept, and tried again with the next letter or when the window closes. */
  readonly missed: (text: string) => void;
  /** Forgets what is not kept yet: it was written for good. */
  readonly forget: () => void;
};

/** Quiet ms after which what was typed is kept, and the longest it may wait while typing goes on. Both under a second. */
export const QUIET = 300;
export const MOST = 800;

/** Saves what is typed in a rhythm that never leaves a second of it unsaved, and never the same text twice. */
export function keeper(save: (text: string) => void, quiet = QUIET, most = MOST): DraftKeeper {
  let waiting: string | null = null;
  let kept: string | null = null;
  let soon: ReturnType<typeof setTimeout> | undefined;
  let latest: ReturnType<typeof setTimeout> | undefined;
  const stop = () => {
    clearTimeout(soon);
    clearTimeout(latest);
    latest = undefined;
  };
  const flush = () => {
    stop();
    if (waiting === null || waiting === kept) return;
    kept = waiting;
    waiting = null;
    save(kept);
  };
  return {
    flush,
    missed: (text) => {
      if (kept !== text) return;
      kept = null;
      waiting ??= text;
    },
    forget: () => {
      stop();
      waiting = null;
      kept = null;
    },
    take: (text) => {
      waiting = text;
      clearTimeout(soon);
      soon = setTimeout(flush, quiet);
      latest ??= setTimeout(flush, most);
    },
  };
}
