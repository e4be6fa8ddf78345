/**
 * A seed from a text, so that what is drawn for it is the same every time: FNV-1a in 32 bits over its characters. Source:
 * G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, "The FNV Non-Cryptographic Hash Algorithm" (offset basis 0x811c9dc5,
 * prime 0x01000193); characters in place of octets.
 */
export function seedOf(text: string): number {
  let seed = 0x811c9dc5;
  for (const char of text) seed = Math.imul(seed ^ (char.codePointAt(0) ?? 0), 0x01000193);
  return seed >>> 0;
}
