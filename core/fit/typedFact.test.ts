import { describe, expect, it } from 'vitest';
import { wall } from '../../tests/builders/harrowmouth.ts';
import type { AttributeName } from './attributes.ts';
import { asTyped, typedAttributes, typedFact } from './typedFact.ts';

describe('a fact as it is typed', () => {
  it('an empty field is not known, never a no', () => {
    expect(typedFact('memory', ' ')).toBeNull();
    expect(typedFact('capacity', null)).toBeNull();
  });
  it.each([
    ['memory', 'ddr4', ['DDR4']],
    ['module', 'so udimm', ['SO-UDIMM']],
    ['socket', 'lga 1200', 'LGA1200'],
    ['bus', 'nvme', 'NVMe'],
    ['power-plugs', '8 pin, 8-pin', ['8-pin', '8-pin']],
    ['takes-boards', 'ATX, micro-ATX', ['atx', 'microatx']],
    // A word that the tables do not have stays as it stands on the part.
    ['socket', 'sTR5', 'sTR5'],
  ] as const)('%s typed as "%s" is recorded as the tables write it', (name, typed, recorded) => {
    expect(typedFact(name, typed)).toEqual(recorded);
  });
  it('"none" says that there are none: a card without power plugs', () => {
    expect(typedFact('power-plugs', 'none')).toEqual([]);
    expect(asTyped([])).toBe('none');
  });
  it('what is recorded of every part on the demo wall can be typed', () => {
    for (const { kind, attributes } of Object.values(wall))
      for (const [name, value] of Object.entries(attributes)) {
        expect(typedAttributes(kind)).toContain(name);
        const again = typedFact(name as AttributeName, asTyped(value));
        expect([name, [again].flat()]).toEqual([name, [value].flat()]);
      }
  });
});
