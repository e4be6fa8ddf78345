import { PURPOSES, type Purpose } from '../../core/journal/personal.ts';
import { isOneOf } from '../../core/table.ts';

/**
 * Names a sealing key: `owner/purpose/n`. It says itself whose and what for, so that a body can be read for what it
 * was even after its key is gone. `n` counts up when an owner who was erased comes again.
 */
export const keyIdOf = (owner: string, purpose: Purpose, n: number): string => `${owner}/${purpose}/${n}`;

/** Reads a key's name; null when it is none. */
export function readKeyId(
  id: string,
): { readonly owner: string; readonly purpose: Purpose; readonly n: number } | null {
  const [, owner, purpose, n] = /^(.+)\/([a-z]+)\/([1-9]\d*)$/.exec(id) ?? [];
  return owner && n && isOneOf(PURPOSES, purpose) ? { owner, purpose, n: Number(n) } : null;
}
