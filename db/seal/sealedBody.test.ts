import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Json } from '../../core/journal/entry.ts';
import { PURPOSES, personal, sealedText } from '../../core/journal/personal.ts';
import { freshKey } from './cipher.ts';
import { keyIdOf, readKeyId } from './keyId.ts';
import { keysNeeded, openBody, type SealedField, sealBody } from './sealedBody.ts';

const keys = new Map<string, Uint8Array>();
const keyOf = (id: string) => keys.get(id) ?? null;
const seal = (body: unknown) =>
  sealBody(body, (owner, purpose) => {
    const id = keyIdOf(owner, purpose, 1);
    const key = keys.get(id) ?? freshKey();
    keys.set(id, key);
    return { id, key };
  });

const anyJson = fc.jsonValue().map((value) => JSON.parse(JSON.stringify(value)) as Json);
const anyMark = fc
  .tuple(fc.constantFrom(...PURPOSES), fc.constantFrom('o1', 'owner/2'), anyJson)
  .map(([purpose, of, value]) => personal(purpose, of, value));
const anyBody = fc.dictionary(
  fc.string(),
  fc.oneof(anyJson, anyMark, fc.array(anyMark), fc.dictionary(fc.string(), anyMark)),
);

describe('a body with personal values', () => {
  it('opens to what was sealed, wherever the values stand in it', () => {
    fc.assert(
      fc.property(anyBody, (body) => {
        expect(openBody(JSON.parse(JSON.stringify(seal(body))) as Json, keyOf)).toEqual(body);
      }),
    );
  });

  it('opens a text that was sealed to that text, and to none where the key is gone', () => {
    const sealed = seal({ says: sealedText('record', 'o1', 'It hums.') });
    expect(JSON.stringify(sealed)).not.toContain('hums');
    expect(openBody(sealed, keyOf)).toEqual({ says: 'It hums.' });
    expect(openBody(sealed, () => null)).toEqual({ says: '' });
  });

  it('seals a long value packed, opens it to the same, and a short one as it is', () => {
    const long = { says: 'The picture came back with the other module. '.repeat(200) };
    const sealed = seal({ long: personal('record', 'o1', long), short: personal('record', 'o1', 'It hums.') });
    expect(JSON.stringify(sealed).length).toBeLessThan(1_000);
    expect(sealed).toMatchObject({ long: { packed: 'd1' }, short: { key: keyIdOf('o1', 'record', 1) } });
    expect(openBody(sealed, keyOf)).toMatchObject({ long: { value: long }, short: { value: 'It hums.' } });
  });

  it('opens no value whose mark of being packed was taken off or put on', () => {
    const long = seal({ a: personal('record', 'o1', 'x'.repeat(999)) }) as { a: SealedField };
    const short = seal({ a: personal('record', 'o1', 'x') }) as { a: SealedField };
    const { packed: _packed, ...asItIs } = long.a;
    const otherwise = [asItIs, { ...long.a, packed: 'br' }, { ...short.a, packed: 'br' }, { ...short.a, packed: 'd1' }];
    for (const a of otherwise) expect(openBody({ a } as Json, keyOf)).toMatchObject({ a: { value: null } });
  });

  it('never seals the same value to the same text', () => {
    const body = { name: personal('contact', 'o1', 'Wilhelmina') };
    expect(seal(body)).not.toEqual(seal(body));
  });

  it('needs each owner’s key for each purpose once', () => {
    const body = {
      a: personal('contact', 'o1', 1),
      b: [personal('contact', 'o1', 2), personal('record', 'o1', 3)],
      c: personal('contact', 'o2', 4),
    };
    expect(keysNeeded(body)).toEqual([
      { owner: 'o1', purpose: 'contact' },
      { owner: 'o1', purpose: 'record' },
      { owner: 'o2', purpose: 'contact' },
    ]);
  });

  it('reads null where a value was moved to another field', () => {
    const sealed = seal({
      name: personal('contact', 'o1', 'Wilhelmina'),
      phone: personal('contact', 'o1', '01632 960123'),
    }) as { name: SealedField; phone: SealedField };
    expect(openBody({ name: sealed.phone, phone: sealed.name }, keyOf)).toEqual({
      name: personal('contact', 'o1', null),
      phone: personal('contact', 'o1', null),
    });
  });

  it('reads null where the key is gone, and still says whose it was and what for', () => {
    expect(openBody(seal({ name: personal('signature', 'owner/2', 'W') }), () => null)).toEqual({
      name: { personal: 'signature', of: 'owner/2', value: null },
    });
  });

  it('names keys so that owner and purpose can be read from the name', () => {
    expect(readKeyId(keyIdOf('a/b', 'record', 12))).toEqual({ owner: 'a/b', purpose: 'record', n: 12 });
    expect(readKeyId('o1/nothing/1')).toBe(null);
  });
});
