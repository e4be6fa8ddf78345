import { PAGE_KEY_MARK } from '../../core/contract/pageKey.ts';

/** Kept for this address and port alone, and worth nothing once its service has ended. */
const KEPT = 'knowngood.page';

/**
 * The key that this browser was let in with: it stands behind the `#` once, is kept for this port's pages, and taken out of
 * the address.
 */
export function pageKey(): string {
  const { hash, pathname, search } = location;
  if (hash.startsWith(`#${PAGE_KEY_MARK}`)) {
    localStorage.setItem(KEPT, hash.slice(1 + PAGE_KEY_MARK.length));
    history.replaceState(history.state, '', pathname + search);
  }
  return localStorage.getItem(KEPT) ?? '';
}
