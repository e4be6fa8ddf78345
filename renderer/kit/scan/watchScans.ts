import { isParted, retype, setBack, takesText, untype } from './retype.ts';
import { type ScanRules, scanReader } from './scanReader.ts';

/** More keys than any code has. */
const MOST_KEYS = 80;
/** A key that comes up again within so many ms was pressed by no hand. Common practice, no source. */
const BY_NO_HAND = 20;
/** A key of the page cannot be pressed back: what no hand pressed is kept from it so much longer, for a busy machine may bring the rest of the scan late. */
const GRACE = 1000;

/** How many keys a scanner pressed for a code, Enter left out. */
const keysOf = (code: string, { prefix }: ScanRules): number => code.length + (prefix?.length ?? 0);

/**
 * Listens to the whole window, before any field or key does, and calls `onScan` with each code scanned, whatever has
 * the focus. Answers how to stop.
 */
export function watchScans(window: Window, rules: ScanRules, onScan: (code: string) => void): () => void {
  const reader = scanReader(rules);
  const silent = new Set<string>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let target: Element | null = null;
  let typedInto: Element | null = null;
  /** When keys that are still down went down, by their place; and whether one of those held back came up at once. */
  const downSince = new Map<string, number>();
  let byNoHand = false;
  /** What stood in a day or an hour before each of the last keys that went into it. */
  let stood: readonly string[] = [];

  /** Types what was held back; into a day or an hour it went by itself. */
  const release = (keys: readonly string[], into: Element | null) => {
    if (!isParted(into)) retype(keys, into);
  };

  const wait = () => {
    clearTimeout(timer);
    const due = reader.deadline();
    if (due === null) byNoHand = false;
    else timer = setTimeout(late, Math.max(0, due - performance.now()) + 1);
  };
  // A busy page may run the timer while keys that came in time still wait in line: they go first.
  const late = () => {
    const graceEnds = byNoHand && !takesText(target) ? (reader.deadline() ?? 0) + GRACE : 0;
    if (inputWaits(window) || performance.now() < graceEnds) timer = setTimeout(late, 4);
    else {
      typedInto = target;
      release(reader.late(performance.now()), target);
      wait();
    }
  };
  /** The hand goes elsewhere: what was typed stands where it was typed before that. */
  const elsewhere = (event: Event) => {
    if (!event.isTrusted) return;
    clearTimeout(timer);
    release(reader.late(), target);
    target = null;
    byNoHand = false;
  };
  const down = (event: KeyboardEvent) => {
    if (!event.isTrusted) return;
    const plain =
      !event.ctrlKey &&
      !event.altKey &&
      !event.metaKey &&
      !event.repeat &&
      !event.isComposing &&
      event.key !== 'Process';
    const focused = window.document.activeElement;
    const parted = isParted(focused) ? focused : null;
    if (parted && event.key.length === 1) stood = [...stood, parted.value].slice(-MOST_KEYS);
    const answer = reader.key({ key: event.key, at: event.timeStamp, plain });
    release(answer.release, target ?? focused);
    if (parted && answer.code !== undefined) setBack(parted, stood.at(-keysOf(answer.code, rules)) ?? parted.value);
    if (answer.now === 'take' || (answer.now === 'hold' && !parted)) {
      event.preventDefault();
      event.stopImmediatePropagation();
      silent.add(event.code);
      if (!event.repeat) downSince.set(event.code, event.timeStamp);
    }
    target = reader.deadline() === null ? null : focused;
    wait();
    if (answer.recall !== undefined) untype(answer.recall, typedInto);
    if (answer.code !== undefined) onScan(answer.code);
  };
  const up = (event: KeyboardEvent) => {
    if (!event.isTrusted || !silent.delete(event.code)) return;
    if (reader.deadline() !== null && event.timeStamp - (downSince.get(event.code) ?? 0) < BY_NO_HAND) byNoHand = true;
    downSince.delete(event.code);
    event.preventDefault();
    event.stopImmediatePropagation();
  };
  window.addEventListener('keydown', down, true);
  window.addEventListener('keyup', up, true);
  window.addEventListener('pointerdown', elsewhere, true);
  return () => {
    clearTimeout(timer);
    release(reader.late(), target);
    window.removeEventListener('keydown', down, true);
    window.removeEventListener('keyup', up, true);
    window.removeEventListener('pointerdown', elsewhere, true);
  };
}

function inputWaits(window: Window): boolean {
  return window.navigator.scheduling?.isInputPending?.() ?? false;
}

declare global {
  interface Navigator {
    /** WICG "isInputPending": what waits for the page before it is handed over. Not in every engine. */
    readonly scheduling?: { isInputPending?(): boolean };
  }
}
