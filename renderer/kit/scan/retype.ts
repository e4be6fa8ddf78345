/** Types what was held back where the focus is: into a field as text that can be undone, else as keys for shortcuts. */
export function retype(keys: readonly string[], target: Element | null): void {
  if (keys.length === 0) return;
  if (takesText(target)) {
    target.ownerDocument.execCommand('insertText', false, keys.join(''));
    return;
  }
  const element = target ?? document.body;
  for (const key of keys) {
    for (const type of ['keydown', 'keyup'])
      element.dispatchEvent(new KeyboardEvent(type, { key, bubbles: true, cancelable: true }));
  }
}

/** Takes back text that `retype` has just written before the cursor; nothing else is touched. */
export function untype(text: string, target: Element | null): void {
  if (!(target instanceof HTMLTextAreaElement || target instanceof HTMLInputElement) || !takesText(target)) return;
  const end = target.selectionStart;
  if (target.ownerDocument.activeElement !== target || end === null) return;
  if (target.value.slice(end - text.length, end) !== text) return;
  target.setSelectionRange(end - text.length, end);
  target.ownerDocument.execCommand('delete');
}

const TEXT_TYPES = new Set(['text', 'search', 'tel', 'url', 'email', 'password', 'number']);
const PARTED_TYPES = new Set(['date', 'time', 'datetime-local', 'month', 'week']);

/** A day or an hour, typed part by part: no script can write into it what was held back, so nothing is held back there. */
export const isParted = (element: Element | null): element is HTMLInputElement =>
  element instanceof HTMLInputElement && PARTED_TYPES.has(element.type);

/** Sets a day or an hour back to what it was before a scan went into it, and tells the page so. */
export function setBack(element: HTMLInputElement, value: string): void {
  const write = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
  write?.call(element, value);
  element.dispatchEvent(new Event('input', { bubbles: true }));
}

/** Whether typing into this element writes text. */
export function takesText(element: Element | null): element is HTMLElement {
  if (element instanceof HTMLTextAreaElement) return !element.readOnly && !element.disabled;
  if (element instanceof HTMLInputElement)
    return (TEXT_TYPES.has(element.type) || isParted(element)) && !element.readOnly && !element.disabled;
  return element instanceof HTMLElement && element.isContentEditable;
}
