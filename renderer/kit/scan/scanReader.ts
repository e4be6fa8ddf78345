/** How a hand scanner is told from a person at the keys. Times in ms. */
export type ScanRules = {
  /** Whether this is a code of ours: its check character fits. */
  readonly check: (code: string) => boolean;
  /** A sign the scanner is set to send first, which nobody types: removes all doubt, and nothing else is ever held back. */
  readonly prefix?: string;
  /** First to last key, Enter included. */
  readonly within?: number;
  /** The longest pause between two keys of one scan. Common practice, no source: hand scanners send a key every 1 to 30 ms. */
  readonly gap?: number;
  /** Fewest characters of a code. */
  readonly least?: number;
};
export type ScanKey = {
  /** As the browser names it: one character, or `Enter`, `Tab`, … */
  readonly key: string;
  readonly at: number;
  /** Without Ctrl, Alt or Meta, not repeating by being held down, not part of an input method's composition. */
  readonly plain: boolean;
};
export type ScanAnswer = {
  /** What was held back and is a person's after all: to be typed now, before this key. */
  readonly release: readonly string[];
  /** `hold` this key back, let it `pass`, or `take` it as the end of a scan. */
  readonly now: 'hold' | 'pass' | 'take';
  /** The code that was scanned, when `now` is `take`. */
  readonly code?: string;
};
export type ScanReader = {
  /** One key, in order of time. */
  readonly key: (key: ScanKey) => ScanAnswer;
  /** When held keys are a person's if nothing follows; null when none is held. */
  readonly deadline: () => number | null;
  /** Nothing followed by the deadline: the keys to type now. */
  readonly late: () => readonly string[];
};

const MODIFIERS = new Set(['Shift', 'CapsLock']);
const PREFIXED_WITHIN = 1000;

/**
 * Tells scans from typing, key by key. A scan is a burst (first to last key within 250 ms, no pause over 50 ms) of at
 * least six characters that ends with Enter and whose check character fits. Its keys never reach a field or a key of
 * the page. Everything else comes out again, in order, once.
 */
export function scanReader(rules: ScanRules): ScanReader {
  const { check, prefix, gap = 50, least = 6 } = rules;
  const within = rules.within ?? (prefix === undefined ? 250 : PREFIXED_WITHIN);
  let held: string[] = [];
  let first = 0;
  let last = 0;

  const letGo = (): readonly string[] => {
    const keys = held;
    held = [];
    return keys;
  };
  const deadline = () =>
    held.length === 0 ? null : prefix === undefined ? Math.min(last + gap, first + within) : first + within;

  return {
    deadline,
    late: letGo,
    key: ({ key, at, plain }) => {
      if (MODIFIERS.has(key)) return { release: [], now: 'pass' };
      const due = deadline();
      const release = due !== null && at > due ? letGo() : [];
      if (plain && key === 'Enter') {
        const code = held.join('').slice(prefix?.length ?? 0);
        if (held.length > 0 && code.length >= least && at - first < within && check(code)) {
          held = [];
          return { release, now: 'take', code };
        }
        return { release: [...release, ...letGo()], now: 'pass' };
      }
      const starts = prefix === undefined ? key !== ' ' : key === prefix;
      if (!plain || [...key].length !== 1 || (held.length === 0 && !starts) || (prefix === undefined && key === ' ')) {
        return { release: [...release, ...letGo()], now: 'pass' };
      }
      if (held.length === 0) first = at;
      held.push(key);
      last = at;
      return { release, now: 'hold' };
    },
  };
}
