import { readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entryBytes } from '../../core/journal/chain.ts';
import type { Json } from '../../core/journal/entry.ts';
import { parseStored } from './readEntry.ts';
import { blobsIn, textOfStored, toBeStored } from './storedBytes.ts';

const entry = (body: Json) =>
  entryBytes({
    branch: 'main',
    stream: 'job:j1',
    by: 'mina',
    device: 'd',
    command: 'c',
    kind: 'noted',
    ...NUMBERS,
    body,
  } as never);
const NUMBERS = { seq: 7, streamSeq: 3, at: 1_791_881_220_000, v: 2 };
const anyBody = fc.jsonValue().map((value): Json => JSON.parse(JSON.stringify(value)));

describe('an entry as it is stored', () => {
  it('is read as it was written, whatever it says', () => {
    fc.assert(
      fc.property(anyBody, (body) => {
        const bytes = entry(body);
        expect(textOfStored(toBeStored(bytes))).toBe(Buffer.from(bytes).toString('utf8'));
        expect(parseStored(toBeStored(bytes)).body).toEqual(body);
      }),
    );
  });

  it('takes less than half of its room', () => {
    const bytes = entry({ kind: 'bench-tag', number: 'BT-2026-0001', supersedes: null });
    expect(toBeStored(bytes).length).toBeLessThan(bytes.length / 2);
  });

  it('is read where it lies as it is, as all did before', () => {
    const bytes = entry({ says: 'It hums.' });
    expect(parseStored(bytes).body).toEqual({ says: 'It hums.' });
  });

  it('names its files, packed or not', () => {
    const blob = `blob:${'0f'.repeat(32)}`;
    for (const bytes of [entry({ blob }), toBeStored(entry({ blob, also: blob }))])
      expect([...blobsIn(bytes)]).toEqual([blob]);
  });

  it('is no entry where it was cut, turned, packed otherwise, or unpacks to more than any entry has', () => {
    const packed = toBeStored(entry({ says: 'It hums. '.repeat(40) }));
    const turned = Buffer.from(packed);
    turned[turned.length >> 1] = (turned[turned.length >> 1] ?? 0) ^ 0xff;
    const zeros = deflateRawSync(Buffer.alloc(20 * 1024 * 1024));
    const others = [
      packed.subarray(0, -4),
      turned,
      Buffer.concat([Buffer.of(1), zeros]),
      Buffer.of(2, 3),
      Buffer.of(1),
    ];
    for (const bytes of others) {
      expect(() => parseStored(bytes)).toThrow();
      expect(blobsIn(bytes).size).toBe(0);
    }
  });
});

it('a journal of before lies as it is: its entries begin with their brace', () => {
  const kept = new URL('../../tests/oldShop/gone-home/shop/shop.db', import.meta.url);
  expect(readFileSync(kept).includes('{"at":')).toBe(true);
});
