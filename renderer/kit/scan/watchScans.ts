import { retype, untype } from './retype.ts';
import { type ScanRules, scanReader } from './scanReader.ts';

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

  const wait = () => {
    clearTimeout(timer);
    const due = reader.deadline();
    if (due !== null) timer = setTimeout(late, Math.max(0, due - performance.now()) + 1);
  };
  // A busy page may run the timer while keys that came in time still wait in line: they go first.
  const late = () => {
    if (inputWaits(window)) timer = setTimeout(late, 4);
    else {
      typedInto = target;
      retype(reader.late(performance.now()), target);
      wait();
    }
  };
  /** The hand goes elsewhere: what was typed stands where it was typed before that. */
  const elsewhere = (event: Event) => {
    if (!event.isTrusted) return;
    clearTimeout(timer);
    retype(reader.late(), target);
    target = null;
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
    const answer = reader.key({ key: event.key, at: event.timeStamp, plain });
    retype(answer.release, target ?? focused);
    if (answer.now !== 'pass') {
      event.preventDefault();
      event.stopImmediatePropagation();
      silent.add(event.code);
    }
    target = reader.deadline() === null ? null : focused;
    wait();
    if (answer.recall !== undefined) untype(answer.recall, typedInto);
    if (answer.code !== undefined) onScan(answer.code);
  };
  const up = (event: KeyboardEvent) => {
    if (!event.isTrusted || !silent.delete(event.code)) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  };
  window.addEventListener('keydown', down, true);
  window.addEventListener('keyup', up, true);
  window.addEventListener('pointerdown', elsewhere, true);
  return () => {
    clearTimeout(timer);
    retype(reader.late(), target);
    window.removeEventListener('keydown', down, true);
    window.removeEventListener('keyup', up, true);
    window.removeEventListener('pointerdown', elsewhere, true);
  };
}

function inputWaits(window: Window): boolean {
  const { scheduling } = window.navigator as Navigator & { readonly scheduling?: { isInputPending?: () => boolean } };
  return scheduling?.isInputPending?.() ?? false;
}
