import { expect, it } from 'vitest';
import { judith } from '../../tests/builders/jobAt.ts';
import { personal } from '../journal/personal.ts';
import { epochMs } from '../time.ts';
import { applyOwner, type OwnerErased } from './owner.ts';

const stream = `owner:${judith.id}` as const;
const erased: OwnerErased = {
  asked: true,
  erased: ['contact'],
  kept: [{ purpose: 'record', why: 'bills', until: epochMs(9) }],
};

it('an owner is as the last word about them has it, and what nobody spoke of stays', () => {
  const name = personal('contact', judith.id, 'Judith Penrose');
  const changed = applyOwner(judith, { stream, kind: 'owner-changed', body: { name } });
  expect(changed).toEqual({ ...judith, name });
});

it('what was erased of an owner is said, with what stays and until when', () => {
  expect(applyOwner(judith, { stream, kind: 'owner-erased', body: erased })?.erased).toEqual(erased);
});

it('of an owner whom nobody knows nothing is changed and nothing erased', () => {
  expect(applyOwner(null, { stream, kind: 'owner-erased', body: erased })).toBeNull();
  expect(applyOwner(null, { stream, kind: 'owner-changed', body: {} })).toBeNull();
});
