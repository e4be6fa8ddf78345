import { describe, expect, it } from 'vitest';
import { CHAIN_START, chainHash } from '../../core/journal/chain.ts';
import { sha256 } from '../../db/seal/sha256.ts';

const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex');

/** Source: the example messages of FIPS 180-4 (NIST, "Secure Hash Standard", SHA-256 examples). */
const EXAMPLES: readonly (readonly [name: string, message: string, digest: string])[] = [
  ['the empty message', '', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['abc', 'abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'the two-block message of 448 bits',
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  [
    'the message of 896 bits',
    'abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu',
    'cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1',
  ],
  ['a million times a', 'a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
];

describe('the hash that chains the journal', () => {
  it.each(EXAMPLES)('is SHA-256 for %s', (_, message, digest) => {
    expect(hex(sha256(Buffer.from(message)))).toBe(digest);
  });

  it.each(EXAMPLES)('hashes the link before and the stored bytes as one message: %s', (_, message, digest) => {
    const bytes = Buffer.from(message);
    const cut = Math.floor(bytes.length / 3);
    expect(hex(chainHash(bytes.subarray(0, cut), bytes.subarray(cut), sha256))).toBe(digest);
  });

  it('starts a branch from 32 zero bytes', () => {
    expect(hex(CHAIN_START)).toBe('0'.repeat(64));
  });
});
