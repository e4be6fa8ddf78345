import { canonicalJson } from '../../../core/journal/canonicalJson.ts';

/** SHA-256 of plain content's canonical JSON, in hex: what stood on the papers when they were signed. */
export async function hashOf(content: unknown): Promise<string> {
  const bytes = new TextEncoder().encode(canonicalJson(content));
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
