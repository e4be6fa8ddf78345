import type { Attributes } from '../custody/part.ts';
import { listOf } from './values.ts';

/** Whether a board's own list has a processor, and from which firmware on (`null`: any). */
export type Listed =
  | { readonly is: 'listed'; readonly from: string | null }
  | { readonly is: 'not-listed' }
  | { readonly is: 'unknown' };

/**
 * Looks a processor up on the board's own list (`processor-list`: `name` or `name@firmware`).
 * No list is `unknown`: a socket that fits is necessary, never enough.
 */
export function processorOnList(board: Attributes, processor: string): Listed {
  const list = listOf(board, 'processor-list');
  if (!list) return { is: 'unknown' };
  for (const entry of list) {
    const [name, from] = entry.split('@');
    if (name?.trim().toLowerCase() === processor.trim().toLowerCase())
      return { is: 'listed', from: from?.trim() || null };
  }
  return { is: 'not-listed' };
}

/**
 * Whether a firmware is at least another. Only plain numbers with dots can be put in order (`1407`, `7.B1` cannot);
 * anything else is `undefined` unless both are the same.
 */
export function firmwareReaches(firmware: string, from: string): boolean | undefined {
  if (firmware === from) return true;
  if (!/^\d+(\.\d+)*$/.test(firmware) || !/^\d+(\.\d+)*$/.test(from)) return undefined;
  const [have, need] = [firmware, from].map((text) => text.split('.').map(Number));
  for (let at = 0; at < Math.max(have?.length ?? 0, need?.length ?? 0); at += 1) {
    const difference = (have?.[at] ?? 0) - (need?.[at] ?? 0);
    if (difference !== 0) return difference > 0;
  }
  return true;
}
