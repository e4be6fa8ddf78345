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

const TEXT_TYPES = new Set([
  'text',
  'search',
  'tel',
  'url',
  'email',
  'password',
  'number',
  'date',
  'time',
  'datetime-local',
]);

/** Whether typing into this element writes text. */
export function takesText(element: Element | null): element is HTMLElement {
  if (element instanceof HTMLTextAreaElement) return !element.readOnly && !element.disabled;
  if (element instanceof HTMLInputElement)
    return TEXT_TYPES.has(element.type) && !element.readOnly && !element.disabled;
  return element instanceof HTMLElement && element.isContentEditable;
}
