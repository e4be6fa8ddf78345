import type { KeyboardEvent } from 'react';

/** Keeps Tab inside an element: from its last stop to its first, and back. */
export function keepFocus(event: KeyboardEvent<HTMLElement>): void {
  if (event.key !== 'Tab') return;
  const stops = [
    ...event.currentTarget.querySelectorAll<HTMLElement>('button, a[href], input, textarea, [tabindex="0"]'),
  ].filter((one) => !one.hasAttribute('disabled'));
  const first = stops[0];
  const last = stops.at(-1);
  const at = document.activeElement;
  if (event.shiftKey && (at === first || at === event.currentTarget)) {
    event.preventDefault();
    last?.focus();
  } else if (!event.shiftKey && at === last) {
    event.preventDefault();
    first?.focus();
  }
}
