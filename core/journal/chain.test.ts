import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CHAIN_START, chainHash, checkLink, entryBytes, type Link, sameBytes } from './chain.ts';

const sha256 = (bytes: Uint8Array) => new Uint8Array(createHash('sha256').update(bytes).digest());

/** A chain over some stored bytes. */
function chainOf(stored: readonly Uint8Array[]): Link[] {
  const links: Link[] = [];
  for (const bytes of stored) {
    const prevHash = links.at(-1)?.hash ?? CHAIN_START;
    links.push({ seq: links.length + 1, prevHash, hash: chainHash(prevHash, bytes, sha256), bytes });
  }
  return links;
}

const firstBroken = (links: readonly Link[]) =>
  links.findIndex((link, index) => checkLink(links[index - 1] ?? null, link, sha256) !== null);
const stored = fc.array(fc.uint8Array({ minLength: 1, maxLength: 40 }), { minLength: 1, maxLength: 12 });

describe('the chain rule', () => {
  it('holds for any entries', () => {
    fc.assert(fc.property(stored, (bytes) => firstBroken(chainOf(bytes)) === -1));
  });

  it('names the very entry whose bytes were turned by one bit', () => {
    fc.assert(
      fc.property(stored, fc.nat(), fc.nat(), (bytes, which, bit) => {
        const links = chainOf(bytes);
        const index = which % links.length;
        const link = links[index] as Link;
        const turned = Uint8Array.from(link.bytes);
        const at = (bit >> 3) % turned.length;
        turned[at] = (turned[at] ?? 0) ^ (1 << (bit & 7));
        links[index] = { ...link, bytes: turned };
        expect(firstBroken(links)).toBe(index);
        expect(checkLink(links[index - 1] ?? null, links[index] as Link, sha256)).toBe('bytes-do-not-fit-hash');
      }),
    );
  });

  it('names the gap where an entry was taken out', () => {
    const links = chainOf([1, 2, 3].map((n) => Uint8Array.of(n)));
    expect(checkLink(links[0] as Link, links[2] as Link, sha256)).toBe('seq-not-next');
    expect(checkLink(links[0] as Link, { ...(links[2] as Link), seq: 2 }, sha256)).toBe('not-linked-to-the-one-before');
  });
});

describe('an entry’s stored bytes', () => {
  const entry = {
    branch: 'main',
    seq: 1,
    stream: 'job:1',
    streamSeq: 1,
    at: 5,
    by: 's',
    device: 'd',
    command: 'c',
    kind: 'k',
    v: 1,
    body: { b: 1, a: 2 },
  } as never;

  it('are the canonical text of everything but the hashes', () => {
    const text = new TextDecoder().decode(entryBytes(entry));
    expect(text).toBe(
      '{"at":5,"body":{"a":2,"b":1},"branch":"main","by":"s","command":"c","device":"d","kind":"k","seq":1,"stream":"job:1","streamSeq":1,"v":1}',
    );
  });

  it('are the same whatever order the fields were in, and leave out what does not belong', () => {
    const other = { ...Object.fromEntries(Object.entries(entry).reverse()), hash: 'x' } as never;
    expect(sameBytes(entryBytes(entry), entryBytes(other))).toBe(true);
  });
});
