import { describe, expect, it } from 'vitest';
import { hers, wall } from '../../tests/builders/harrowmouth.ts';
import { PART_KINDS, type PartKind, type ThingKind } from '../custody/part.ts';
import {
  ATTRIBUTE_NAMES,
  attributeFaults,
  attributeRule,
  attributesOf,
  directionOf,
  rowsOf,
  unitOf,
} from './attributes.ts';

const DIRECTIONS = ['more', 'less', 'includes', 'yes', 'later', 'unordered', 'shown'];

describe('the attribute table', () => {
  it.each(ATTRIBUTE_NAMES)(
    '%s has known kinds, a direction that suits its type, and an order where it needs one',
    (name) => {
      const rule = attributeRule(name);
      for (const kind of rule.kinds) {
        expect(PART_KINDS as readonly ThingKind[]).toContain(kind);
        const direction = directionOf(name, kind as PartKind);
        expect(DIRECTIONS).toContain(direction);
        if (direction === 'more' || direction === 'less') expect(rule.type).toBe('number');
        if (direction === 'yes') expect(rule.type).toBe('yes-no');
        if (direction === 'includes') expect(rule.type).toBe('list');
        if (direction === 'later') expect(rule.type).toBe('one-of');
      }
      if (rule.type === 'one-of') expect(rule.order?.flat().length).toBeGreaterThan(1);
      for (const kind of rule.kinds)
        if (rule.type === 'number') expect([kind, unitOf(name, kind)]).not.toContain(undefined);
    },
  );
  it.each(PART_KINDS)('every row of a %s is made of its own attributes, none twice', (kind) => {
    const members = rowsOf(kind).flatMap((row) => row.of);
    expect(new Set(members).size).toBe(members.length);
    for (const name of members) expect(attributesOf(kind)).toContain(name);
  });
  it('describes every part on the demo wall and in the demo machine', () => {
    const parts = [...Object.values(wall), ...Object.values(hers).map(({ part }) => part)];
    for (const part of parts) expect([part.name, attributeFaults(part.kind, part.attributes)]).toEqual([part.name, []]);
  });
});

describe('attributes at the door', () => {
  it('refuses a name the kind does not have', () => {
    expect(attributeFaults('dimm', { cores: 6 })).toEqual([
      { refused: 'attribute-unknown', attribute: 'cores', kind: 'dimm' },
    ]);
  });
  it('refuses a value of the wrong type or outside its list', () => {
    expect(attributeFaults('dimm', { capacity: '8 GB' })).toEqual([
      { refused: 'attribute-type', attribute: 'capacity', type: 'number' },
    ]);
    expect(attributeFaults('dimm', { capacity: -8 })).toEqual([
      { refused: 'attribute-type', attribute: 'capacity', type: 'number' },
    ]);
    expect(attributeFaults('board', { 'form-factor': 'huge' })).toMatchObject([
      { refused: 'attribute-value', attribute: 'form-factor' },
    ]);
  });
  it('refuses a figure that was read in another unit: 8 GiB as 8192, DDR4 at 2666 MT/s as the 21300 of its name', () => {
    expect(attributeFaults('dimm', { capacity: 8192 })).toEqual([
      { refused: 'attribute-too-much', attribute: 'capacity', most: 1024, unit: 'GiB' },
    ]);
    expect(attributeFaults('dimm', { 'memory-speed': 21_300 })).toMatchObject([{ unit: 'MT/s' }]);
    expect(attributeFaults('drive', { capacity: 8192 })).toEqual([]);
  });
  it('refuses what can only be worked out', () => {
    expect(attributeFaults('board', { 'processor-listed': true })).toEqual([
      { refused: 'attribute-derived', attribute: 'processor-listed' },
    ]);
  });
});
