import { argon2Sync } from 'node:crypto';
import { expect, it } from 'vitest';
import { givesHash, hashSecret, USUAL_COST } from './secretHash.ts';

const CHEAP = { m: 64, t: 1, p: 1 };

it('a PIN gives its own hash, and no other PIN does', async () => {
  const hash = await hashSecret('4711', CHEAP);
  expect(await givesHash('4711', hash)).toBe(true);
  for (const other of ['4712', '471', '47110', '', ' 4711']) expect(await givesHash(other, hash), other).toBe(false);
});

it('the hash is argon2id as another implementation computes it, at the cost that shops pay', async () => {
  const hash = await hashSecret('4711');
  const [, , , cost, salt = '', stored = ''] = hash.split('$');
  expect(cost).toBe(`m=${USUAL_COST.m},t=${USUAL_COST.t},p=${USUAL_COST.p}`);
  // Node's own argon2 (OpenSSL) stands beside the library: RFC 9106 has one answer.
  const elsewhere = argon2Sync('argon2id', {
    message: '4711',
    nonce: Buffer.from(salt, 'base64'),
    memory: USUAL_COST.m,
    passes: USUAL_COST.t,
    parallelism: USUAL_COST.p,
    tagLength: 32,
  });
  expect(Buffer.from(stored, 'base64').equals(elsewhere)).toBe(true);
});

it('two people with one PIN have two hashes', async () => {
  expect(await hashSecret('4711', CHEAP)).not.toBe(await hashSecret('4711', CHEAP));
});

it('what is no hash is given by nothing', async () => {
  for (const none of ['', '4711', '$argon2i$v=19$m=64,t=1,p=1$AAAA$AAAA', '$argon2id$v=19$m=64,t=1,p=1$$'])
    expect(await givesHash('4711', none)).toBe(false);
});
