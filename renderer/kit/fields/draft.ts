import { useCallback, useEffect, useRef, useState } from 'react';
import { type DraftKeeper, type DraftStore, keeper } from './keeper.ts';

export type { DraftStore } from './keeper.ts';

export type SheetDraft<T> = {
  readonly value: T;
  readonly set: (value: T) => void;
  /** Nothing was loaded yet: show the sheet as it is, but do not overwrite. */
  readonly loading: boolean;
  /** When it was last kept (ms), for "kept as a draft at 10:41". */
  readonly keptAt: number | null;
  /** What was typed last could not be kept: it stands on this screen alone. */
  readonly notKept: boolean;
  /** It was written for good: the draft is dropped. */
  readonly done: () => void;
};

/**
 * A value whose last state survives a closed window or a crash, but for the last second.
 * @param key names the sheet: `taking-in`, `job/…/note`.
 * @param start what is there when no draft is; @param store where drafts are kept.
 */
export function useDraft<T>(key: string, start: T, store: DraftStore): SheetDraft<T> {
  const [value, setValue] = useState(start);
  const [loading, setLoading] = useState(true);
  const [keptAt, setKeptAt] = useState<number | null>(null);
  const [notKept, setNotKept] = useState(false);
  const keep = useRef<DraftKeeper | null>(null);
  const touched = useRef(false);

  useEffect(() => {
    let gone = false;
    touched.current = false;
    const own = keeper((text) => {
      Promise.resolve(store.save(key, text)).then(
        () => {
          if (gone) return;
          setKeptAt(Date.now());
          setNotKept(false);
        },
        () => {
          own.missed(text);
          if (!gone) setNotKept(true);
        },
      );
    });
    keep.current = own;
    setLoading(true);
    store.load(key).then(
      (text) => {
        if (gone) return;
        if (text !== null && !touched.current) setValue(JSON.parse(text) as T);
        setLoading(false);
      },
      () => {
        if (!gone) setLoading(false);
      },
    );
    const hidden = () => own.flush();
    window.addEventListener('pagehide', hidden);
    document.addEventListener('visibilitychange', hidden);
    return () => {
      gone = true;
      own.flush();
      window.removeEventListener('pagehide', hidden);
      document.removeEventListener('visibilitychange', hidden);
    };
  }, [key, store]);

  const set = useCallback((now: T) => {
    touched.current = true;
    setValue(now);
    keep.current?.take(JSON.stringify(now));
  }, []);
  const done = useCallback(() => {
    keep.current?.forget();
    setKeptAt(null);
    setNotKept(false);
    // What cannot be dropped now is overwritten by the next sheet of that name.
    void Promise.resolve(store.drop(key)).catch(() => undefined);
  }, [key, store]);
  return { value, set, loading, keptAt, notKept, done };
}
