import { describe, expect, it } from 'vitest';
import { judith } from '../../tests/builders/jobAt.ts';
import { personal } from '../journal/personal.ts';
import { mayCollect, whoMayAnswer, whoMayCollect, whyMayNotAnswer } from './mayAnswer.ts';
import type { Owner, OwnerKind } from './owner.ts';

const held = <T>(value: T) => personal('contact', judith.id, value);
const of = (kind: OwnerKind, more: Partial<Owner> = {}): Owner => ({
  ...judith,
  name: held('Ada Rowe'),
  kind,
  ...more,
});
const money = (amountMinor: number | null) => ({ amountMinor, data: false });
const DATA = { amountMinor: null, data: true };
const refused = (owner: Owner, name: string, about = money(100)) =>
  whyMayNotAnswer(owner, name, about)?.refused ?? null;

describe('a person', () => {
  it('speaks for themselves, however the name is written, and nobody else does', () => {
    expect(refused(of({ is: 'person' }), '  ada   ROWE ')).toBeNull();
    expect(refused(of({ is: 'person' }), 'Bob Rowe')).toBe('may-not-answer');
  });
  it('whose name was erased is nobody', () => {
    const erased = of({ is: 'person' }, { name: { ...held('x'), value: null } });
    expect(refused(erased, '')).toBe('may-not-answer');
    expect(whoMayAnswer(erased)).toEqual([]);
  });
});

describe('a minor', () => {
  const minor = of({ is: 'minor', guardian: held('Cem Rowe') });
  it('is answered for by the guardian, not by themselves', () => {
    expect(refused(minor, 'Cem Rowe')).toBeNull();
    expect(refused(minor, 'Ada Rowe')).toBe('guardian-answers');
    expect(whoMayAnswer(minor).map(({ name }) => name)).toEqual(['Cem Rowe']);
  });
  it('may fetch the machine, and so may the guardian', () => {
    expect(whoMayCollect(minor)).toEqual(['Ada Rowe', 'Cem Rowe']);
  });
});

describe('who brings somebody else’s machine', () => {
  const brought = of({ is: 'for-someone-else', machineOf: held('Dee Lund') });
  it('speaks of money; of the data only whose machine it is', () => {
    expect(refused(brought, 'Ada Rowe')).toBeNull();
    expect(whyMayNotAnswer(brought, 'Ada Rowe', DATA)).toEqual({ refused: 'data-owner-answers', name: 'Ada Rowe' });
    expect(whyMayNotAnswer(brought, 'Dee Lund', DATA)).toBeNull();
    expect(refused(brought, 'Eve')).toBe('may-not-answer');
    expect(mayCollect(brought, 'Dee Lund')).toBe(true);
    expect(whoMayAnswer(brought).map(({ name, data }) => [name, data])).toEqual([
      ['Ada Rowe', false],
      ['Dee Lund', true],
    ]);
  });
});

describe('a company', () => {
  const company = (more: object = {}) =>
    of({ is: 'company', orderNumber: null, approves: held('Fay'), approvesUpToMinor: 5000, ...more });
  it('is answered for by who approves, each up to their own amount', () => {
    const two = company({ alsoApprove: held([{ name: 'Gus', upToMinor: null }]) });
    expect(whyMayNotAnswer(two, 'Fay', money(5000))).toBeNull();
    expect(whyMayNotAnswer(two, 'Fay', money(5001))).toEqual({
      refused: 'approves-less',
      name: 'Fay',
      upToMinor: 5000,
      amountMinor: 5001,
    });
    expect(refused(two, 'Gus', money(999_999))).toBeNull();
    expect(refused(two, 'Hal')).toBe('may-not-answer');
  });
  it('is spoken for by all of these, and by who brings it in nothing but money where somebody approves', () => {
    const whom = (owner: Owner) => whoMayAnswer(owner).map(({ name, upToMinor, money: of }) => [name, upToMinor, of]);
    expect(whom(company())).toEqual([
      ['Fay', 5000, true],
      ['Ada Rowe', null, false],
    ]);
    expect(whom(company({ approves: held('Ada Rowe') }))).toEqual([['Ada Rowe', 5000, true]]);
    expect(whom(company({ approves: null }))).toEqual([['Ada Rowe', null, true]]);
  });
  it('who brings it does not speak of money where somebody approves, and does where nobody does', () => {
    expect(refused(company(), 'Ada Rowe', money(1))).toBe('approver-answers');
    expect(refused(company(), 'Ada Rowe', money(null))).toBeNull();
    expect(refused(company({ approves: null }), 'Ada Rowe', money(1))).toBeNull();
  });
});

it('those whom the owner named may fetch the machine, and nobody else', () => {
  const owner = of({ is: 'person' }, { mayCollect: held(['Ivo']) });
  expect(mayCollect(owner, 'ivo')).toBe(true);
  expect(mayCollect(owner, 'Ada Rowe')).toBe(true);
  expect(mayCollect(owner, 'Jan')).toBe(false);
});
