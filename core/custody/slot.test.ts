import { expect, it } from 'vitest';
import { takesKind } from './slot.ts';

it('a disk and a disc writer share a plug, a small card goes into a long slot, and nothing else shares a place', () => {
  expect(takesKind('drive', 'optical-drive')).toBe(true);
  expect(takesKind('optical-drive', 'drive')).toBe(true);
  expect(takesKind('card', 'add-in')).toBe(true);
  expect(takesKind('add-in', 'card')).toBe(true);
  expect(takesKind('dimm', 'dimm')).toBe(true);
  expect(takesKind('dimm', 'card')).toBe(false);
  expect(takesKind('drive', 'card')).toBe(false);
});
