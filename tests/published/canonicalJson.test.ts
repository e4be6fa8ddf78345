import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../core/journal/canonicalJson.ts';
import type { Json } from '../../core/journal/entry.ts';

const sha256Hex = (text: string) => createHash('sha256').update(text, 'utf8').digest('hex');

/**
 * Source: test data of the RFC 8785 reference set by one of its authors, github.com/cyberphone/json-canonicalization,
 * folder testdata/ at commit 19d51d7: input texts, and byte length and SHA-256 of the canonical output.
 */
const REFERENCE: readonly {
  readonly name: string;
  readonly input: string;
  readonly bytes: number;
  readonly sha256: string;
}[] = [
  {
    name: 'arrays',
    input: '[56,{"d":true,"10":null,"1":[ ]}]',
    bytes: 32,
    sha256: '099601b171cafed97c333f8878d68e7f8c8f795412adb34b2fdcf0e7c7beac42',
  },
  {
    name: 'french',
    input:
      '{"peach":"This sorting order","péché":"is wrong according to French","pêche":"but canonicalization MUST","sin":"ignore locale"}',
    bytes: 130,
    sha256: 'd99d0ebdcb0033cb858cfa830ae46bc0fb3309413b271f1da828c89901a27ed5',
  },
  {
    name: 'structures',
    input: '{"1":{"f":{"f":"hi","F":5},"\\n":56.0},"10":{},"":"empty","a":{},"111":[{"e":"yes","E":"no"}],"A":{}}',
    bytes: 98,
    sha256: '605f65004ec2db7692522a0852c22f1c989e036d547e88963d1a3143cf3195d5',
  },
  {
    name: 'unicode',
    input: '{"Unnormalized Unicode":"A\\u030a"}',
    bytes: 30,
    sha256: '0d99aad92a125196ff887876643fd3206786a84ddce2cee52ba4ad256d2381d3',
  },
  {
    name: 'values',
    input:
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
    bytes: 118,
    sha256: '2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb',
  },
  {
    name: 'weird',
    input:
      '{"\\u20ac":"Euro Sign","\\r":"Carriage Return","\\u000a":"Newline","1":"One","\\u0080":"Control\\u007f","\\ud83d\\ude02":"Smiley","\\u00f6":"Latin Small Letter O With Diaeresis","\\ufb33":"Hebrew Letter Dalet With Dagesh","</script>":"Browser Challenge"}',
    bytes: 214,
    sha256: '6af595a9aa80110b964b4de3f82a05fa6ae7423005019bacfa2620dddc4e94d1',
  },
];

/** An IEEE 754 double from the 16 hexadecimal digits of its bits. */
function double(bits: string): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setBigUint64(0, BigInt(`0x${bits}`));
  return view.getFloat64(0);
}

/**
 * Source: the first seven from testdata/README of the reference set named above; the others RFC 8785 Appendix B, from
 * memory, recomputed with the npm package canonicalize 4.0.0.
 */
const NUMBERS: readonly (readonly [bits: string, text: string])[] = [
  ['4340000000000001', '9007199254740994'],
  ['4340000000000002', '9007199254740996'],
  ['444b1ae4d6e2ef50', '1e+21'],
  ['3eb0c6f7a0b5ed8d', '0.000001'],
  ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
  ['8000000000000000', '0'],
  ['0000000000000000', '0'],
  ['0000000000000001', '5e-324'],
  ['7fefffffffffffff', '1.7976931348623157e+308'],
  ['4430000000000000', '295147905179352830000'],
  ['44b52d02c7e14af5', '9.999999999999997e+22'],
  ['44b52d02c7e14af6', '1e+23'],
  ['444b1ae4d6e2ef4e', '999999999999999700000'],
  ['41b3de4355555555', '333333333.3333333'],
  ['becbf647612f3696', '-0.0000033333333333333333'],
  ['43143ff3c1cb0959', '1424953923781206.2'],
];

describe('canonical JSON (RFC 8785)', () => {
  it.each(REFERENCE)('writes the reference text "$name" to the same bytes', ({ input, bytes, sha256 }) => {
    const text = canonicalJson(JSON.parse(input) as Json);
    expect(Buffer.byteLength(text, 'utf8')).toBe(bytes);
    expect(sha256Hex(text)).toBe(sha256);
  });

  it.each(NUMBERS)('writes the double %s as %s', (bits, text) => {
    expect(canonicalJson(double(bits))).toBe(text);
  });

  it.each(['7fffffffffffffff', '7ff0000000000000', 'fff0000000000000'])(
    'refuses the double %s, which JSON cannot carry',
    (bits) => {
      expect(() => canonicalJson(double(bits))).toThrow(TypeError);
    },
  );

  it('refuses half of a surrogate pair, in a value and in a name', () => {
    // RFC 8785 section 3.2.2.2: a lone surrogate must end in an error.
    expect(() => canonicalJson({ words: 'broken \ud83d' })).toThrow(/\/words/);
    expect(() => canonicalJson({ 'broken \ude02': 1 })).toThrow(TypeError);
  });
});
