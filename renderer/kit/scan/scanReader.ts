/** How a hand scanner is told from a person at the keys. Times in ms. */
export type ScanRules = {
  /** Whether this is a code of ours: its check character fits. */
  readonly check: (code: string) => boolean;
  /** A sign the scanner is set to send first, which nobody types: removes all doubt, and nothing else is ever held back. */
  readonly prefix?: string;
  /** First to last key, Enter included. */
  readonly within?: number;
  /** The longest pause between two keys of one scan with small letters in it. Common practice, no source: hand scanners send a key every 1 to 30 ms. */
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
  /** What the clock let go although it was part of that scan, whose later keys came in late: to be taken back. */
  readonly recall?: string;
};
export type ScanReader = {
  /** One key, in order of time. */
  readonly key: (key: ScanKey) => ScanAnswer;
  /** When held keys are a person's if nothing follows; null when none is held. */
  readonly deadline: () => number | null;
  /**
   * The keys that no scan can begin with any more at this time; all that are held, when no time is given. A busy
   * machine may still bring a key that was pressed before: `recall` then says what was let go too early.
   */
  readonly late: (at?: number) => readonly string[];
};

const MODIFIERS = new Set(['Shift', 'CapsLock']);
const PREFIXED_WITHIN = 1000;

type Held = { readonly key: string; readonly at: number };

const textOf = (run: readonly Held[]): string => run.map(({ key }) => key).join('');

/**
 * Tells scans from typing, key by key. A scan is a burst (first to last key in less than 250 ms) of at least six
 * characters that ends with Enter and whose check character fits; its keys never reach a field or a key of the page.
 * Everything else comes out again, in order, once. What could stand in a tag (capitals and digits) waits until a scan
 * that begins with it would be over; a small letter, which only a scanner with Caps Lock on would send, waits no longer
 * than the pause between two keys of a scanner, so that running text is not slowed.
 */
export function scanReader(rules: ScanRules): ScanReader {
  const { check, prefix, gap = 50, least = 6 } = rules;
  const within = rules.within ?? (prefix === undefined ? 250 : PREFIXED_WITHIN);
  let held: readonly Held[] = [];
  /** Let go by the clock, and young enough to be the beginning of a scan whose next key is under way. */
  let gone: readonly Held[] = [];

  /** Lets the first `count` keys go. */
  const letGo = (count: number): readonly string[] => {
    const keys = held.slice(0, count).map(({ key }) => key);
    held = held.slice(count);
    return keys;
  };
  const tagShaped = () => prefix !== undefined || held.every(({ key }) => /[0-9A-Z]/.test(key));
  const deadline = () => {
    const [first, last] = [held[0], held.at(-1)];
    if (!first || !last) return null;
    return tagShaped() ? first.at + within : Math.min(last.at + gap, first.at + within);
  };
  /** How many keys are a person's by now. */
  const over = (at: number): number => {
    if (prefix !== undefined) return held[0] !== undefined && at >= held[0].at + within ? held.length : 0;
    const last = held.at(-1);
    if (last && !tagShaped() && at > last.at + gap) return held.length;
    return held.filter((one) => at >= one.at + within).length;
  };
  /** Where the code begins in this run of keys, when Enter comes now: a key typed just before a scan is not part of it. */
  const codeFrom = (run: readonly Held[], at: number): number => {
    const signs = prefix?.length ?? 0;
    const starts = prefix === undefined ? run.map((_, from) => from) : [0];
    const text = textOf(run);
    return (
      starts.find((from) => {
        const code = text.slice(from + signs);
        return code.length >= least && at - (run[from]?.at ?? 0) < within && check(code);
      }) ?? -1
    );
  };
  /** The end of a scan, if Enter is one now. */
  const taken = (at: number, release: readonly string[]): ScanAnswer | null => {
    const early = gone.filter((one) => at < one.at + within);
    const run = [...early, ...held];
    const from = codeFrom(run, at);
    if (from < 0) return null;
    const before = letGo(Math.max(0, from - early.length));
    held = [];
    const recall = textOf(early.slice(from));
    const code = textOf(run.slice(from)).slice(prefix?.length ?? 0);
    return { release: [...release, ...before], now: 'take', code, ...(recall !== '' && { recall }) };
  };

  return {
    deadline,
    late: (at) => {
      const count = at === undefined ? held.length : over(at);
      gone = at === undefined ? [] : [...gone, ...held.slice(0, count)];
      return letGo(count);
    },
    key: ({ key, at, plain }) => {
      if (MODIFIERS.has(key)) return { release: [], now: 'pass' };
      const release = letGo(over(at));
      if (release.length > 0) gone = [];
      const scan = plain && key === 'Enter' ? taken(at, release) : null;
      if (scan) {
        gone = [];
        return scan;
      }
      const starts = prefix === undefined ? key !== ' ' : key === prefix;
      const begun = held.length > 0 || gone.some((one) => at < one.at + within);
      if (!plain || [...key].length !== 1 || (!begun && !starts) || (prefix === undefined && key === ' ')) {
        gone = [];
        return { release: [...release, ...letGo(held.length)], now: 'pass' };
      }
      held = [...held, { key, at }];
      return { release, now: 'hold' };
    },
  };
}
