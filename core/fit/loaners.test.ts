import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { herMachine, hers, wall } from '../../tests/builders/harrowmouth.ts';
import type { PartFacts, ProofStatus } from '../custody/part.ts';
import type { JobId } from '../ids.ts';
import { epochMs } from '../time.ts';
import { type LoanerQuestion, loaners, type StockPart } from './loaners.ts';

const job = 'hers' as JobId;
const stock = (part: PartFacts, over: Partial<StockPart> = {}): StockPart => ({
  part,
  in: true,
  reservedFor: null,
  worthMinor: null,
  ...over,
});
const question = (over: Partial<LoanerQuestion>): LoanerQuestion => ({
  kind: 'dimm',
  slot: 'A2',
  scope: 'starts',
  suspects: ['dimm'],
  job,
  at: epochMs(1_000),
  ...over,
});
const named = (result: ReturnType<typeof loaners>) => result.offered.map(({ stock: { part } }) => part.id);
const cards = [stock(wall.S04, { worthMinor: 12_000 }), stock(wall.S03, { worthMinor: 2_500 })];
const cardQuestion = question({ kind: 'card', slot: 'x16', suspects: ['card'] });

describe('which loaner to take from the wall', () => {
  it('offers the old module before the good set: a loaner may die', () => {
    expect(named(loaners(question({}), herMachine, [stock(wall.S02), stock(wall.S01)]))).toEqual(['S01', 'S02']);
  });
  it('does not offer the old module for a question that needs proof under load', () => {
    const under: ProofStatus = {
      ...wall.S02.standing,
      evidence: { at: epochMs(0), by: 'Nessa', where: 'night pass', scopes: ['under-load'] },
    } as ProofStatus;
    const result = loaners(question({ scope: 'under-load' }), herMachine, [
      stock({ ...wall.S02, standing: under }),
      stock(wall.S01),
    ]);
    expect(named(result)).toEqual(['S02']);
    expect(result.leftOut).toMatchObject([{ why: 'not-proved-that-far' }]);
  });
  it('offers a free one before one that is out or held for another job', () => {
    const free = stock({ ...wall.S01, id: 'S14' as PartFacts['id'], standing: wall.S02.standing });
    expect(named(loaners(question({}), herMachine, [stock(wall.S01, { in: false }), free]))).toEqual(['S14', 'S01']);
    expect(
      named(loaners(question({}), herMachine, [stock(wall.S01, { reservedFor: 'other' as JobId }), free])),
    ).toEqual(['S14', 'S01']);
    expect(named(loaners(question({}), herMachine, [stock(wall.S01, { reservedFor: job }), free]))).toEqual([
      'S01',
      'S14',
    ]);
  });
  it('with the supply in doubt, offers the card that needs no lead of it first, even where it is worth more', () => {
    const dear = [
      stock(wall.S04, { worthMinor: 100 }),
      stock({ ...wall.S03, standing: wall.S04.standing }, { worthMinor: 9_000 }),
    ];
    expect(named(loaners(cardQuestion, herMachine, dear))).toEqual(['S04', 'S03']);
    expect(named(loaners({ ...cardQuestion, suspects: ['card', 'supply'] }, herMachine, dear))).toEqual(['S03', 'S04']);
  });
  it('offers the cheaper of two that are alike otherwise', () => {
    const same = cards.map((one) => ({ ...one, part: { ...one.part, standing: wall.S04.standing } }));
    expect(named(loaners(cardQuestion, herMachine, same))).toEqual(['S03', 'S04']);
  });
  it('offers one of which nobody knows the worth after one of which somebody does', () => {
    const [known, unknown] = [wall.S03, { ...wall.S04, standing: wall.S03.standing }];
    expect(named(loaners(cardQuestion, herMachine, [stock(unknown), stock(known, { worthMinor: 9_000 })]))).toEqual([
      'S03',
      'S04',
    ]);
  });
  it('counts a card whose plugs nobody knows, and a drive on a lead, for ones that need the supply; an M.2 drive not', () => {
    const needs = (part: PartFacts, slot: string) =>
      loaners(question({ kind: part.kind, slot, scope: 'starts' }), herMachine, [stock(part)]).offered[0]
        ?.needsOfSupply;
    const { 'power-plugs': _, ...rest } = wall.S03.attributes;
    expect([needs(wall.S03, 'x16'), needs({ ...wall.S03, attributes: rest }, 'x16')]).toEqual([false, true]);
    const good = { standing: wall.S01.standing, belongs: wall.S01.belongs };
    expect(needs({ ...hers.m2.part, ...good }, 'M2_1')).toBe(false);
    expect(needs({ ...wall.S12, ...good }, 'SATA 1')).toBe(true);
  });
  it('goes into whatever slot takes it where none was named, and into no other than the one that was', () => {
    const newer = {
      ...herMachine,
      slots: {
        ...herMachine.slots,
        slots: herMachine.slots.slots.map((slot) =>
          slot.id === 'A1' ? { ...slot, attributes: { memory: 'DDR5' } } : slot,
        ),
      },
    };
    const inSlot = (slot: string | null, machine = newer) => loaners(question({ slot }), machine, [stock(wall.S01)]);
    expect(inSlot(null).offered[0]?.fit.fits).toBe('yes');
    expect(inSlot('A1')).toMatchObject({ offered: [], leftOut: [{ why: 'does-not-fit' }] });
    const unseen = { ...herMachine, slots: { slots: [], gaps: ['dimm-slots'] } };
    expect(inSlot(null, unseen).offered[0]?.fit).toEqual({ fits: 'unknown', reasons: [] });
  });
  it('leaves out what does not fit, and says why', () => {
    const result = loaners(question({ kind: 'processor', slot: 'socket', suspects: ['processor'] }), herMachine, [
      stock(wall.S08),
      stock(wall.S07),
    ]);
    expect(named(result)).toEqual(['S07']);
    expect(result.leftOut).toMatchObject([
      { stock: { part: { id: 'S08' } }, why: 'does-not-fit', fit: { fits: 'no' } },
    ]);
  });
  it.each<[string, ProofStatus]>([
    ['exposed', { is: 'exposed', to: ['dimm-slot'], job: 'j', before: wall.S01.standing }],
    ['unproved', { is: 'unproved', why: 'scrapped case' }],
    ['suspect', { is: 'suspect' }],
    ['dead', { is: 'dead', how: 'dropped' }],
  ])('never offers a part that is %s: it would answer nothing', (_, standing) => {
    const result = loaners(question({}), herMachine, [stock({ ...wall.S01, standing })]);
    expect(result.offered).toEqual([]);
    expect(result.leftOut).toMatchObject([{ why: 'standing-proves-nothing' }]);
  });
  it('never offers a lapsed proof or an owner’s part', () => {
    const lapsed = { ...wall.S02.standing, lapses: epochMs(1_000) } as ProofStatus;
    const result = loaners(question({}), herMachine, [
      stock({ ...wall.S02, standing: lapsed }),
      stock(hers.module1.part),
    ]);
    expect(result.offered).toEqual([]);
    expect(result.leftOut.map(({ why }) => why)).toEqual(['lapsed', 'not-shops']);
  });
  it('puts one of which the fit is not known behind one that fits, and keeps it marked', () => {
    const vague = stock({ ...wall.S01, attributes: { ...wall.S01.attributes, module: 'DIMM' } });
    const result = loaners(question({}), herMachine, [vague, stock(wall.S02)]);
    expect(named(result)).toEqual(['S02', 'S01']);
    expect(result.offered[1]?.fit.fits).toBe('unknown');
  });
  it('gives the same order whatever the order of the stock, and loses no part', () => {
    const all = [
      stock(wall.S01),
      stock(wall.S02),
      stock({ ...wall.S02, id: 'S20' as PartFacts['id'] }, { worthMinor: 5 }),
      stock(wall.S01, { in: false }),
    ];
    const want = named(loaners(question({}), herMachine, all.slice(0, 3)));
    fc.assert(
      fc.property(fc.shuffledSubarray(all.slice(0, 3), { minLength: 3 }), (shuffled) => {
        const result = loaners(question({}), herMachine, shuffled);
        expect(named(result)).toEqual(want);
        expect(result.offered.length + result.leftOut.length).toBe(3);
      }),
    );
  });
});
