import { describe, expect, it } from 'vitest';
import { aPart, BIN, inSlot, JOB, NOON, OWNER, ours, TRAY } from '../../tests/builders/custody.ts';
import type { JobId, PartId } from '../ids.ts';
import { epochMs } from '../time.ts';
import { applyPart, type Part, type PartEntry } from './ledger.ts';
import type { Place } from './place.ts';

type Told = PartEntry extends infer E ? (E extends PartEntry ? Pick<E, 'kind' | 'body'> : never) : never;
/** The part after these entries of its stream, written by Ada. */
const after = (part: Part, ...told: readonly Told[]): Part =>
  told.reduce(
    (now, entry) =>
      applyPart(now, { stream: `part:${part.id}`, at: NOON, by: 'ada', ...entry } as Parameters<typeof applyPart>[1]) ??
      now,
    part,
  );
const moved = (to: Place): Told => ({
  kind: 'part-moved',
  body: { from: TRAY, to, job: JOB, why: { by: 'hand' }, title: null, at: epochMs(NOON + 5), by: 'kim' },
});
const joined = (part: string): Told => ({ kind: 'rider-joined', body: { part: part as PartId } });

describe('a part’s home', () => {
  it('is the bin it was put in last, wherever it went since', () => {
    const bin = { at: 'bin', bin: '7' } as const;
    expect(after(ours(), moved(bin), moved(inSlot('A1'))).home).toEqual(bin);
    expect(after(ours(), moved(TRAY)).home).toEqual(BIN);
  });
});

describe('who moved it last, and when', () => {
  it('is said by the move', () => {
    expect(after(aPart(), moved(TRAY))).toMatchObject({ place: TRAY, since: NOON + 5, movedBy: 'kim' });
  });
});

describe('a lead', () => {
  it('belongs for ever to the supply that it first went with', () => {
    const [own, other] = ['own' as PartId, 'other' as PartId];
    const lead = after(aPart({ kind: 'lead' }), moved({ at: 'with', part: own }), moved(TRAY));
    expect(lead.companion).toBe(own);
    expect(after(lead, moved({ at: 'with', part: other })).companion).toBe(own);
  });
  it('rides along once, and rides no more when it left', () => {
    const supply = after(aPart(), joined('a'), joined('b'), joined('a'));
    expect(supply.riders).toEqual(['b', 'a']);
    expect(after(supply, { kind: 'rider-left', body: { part: 'b' as PartId } }).riders).toEqual(['a']);
  });
});

describe('a part that is put right', () => {
  it('keeps what is not spoken of, and loses what turned out not to be known', () => {
    const part = aPart({ attributes: { capacity: 8, memory: 'DDR4' } });
    const right = after(part, { kind: 'part-corrected', body: { attributes: { capacity: 16 }, unknown: ['memory'] } });
    expect(right).toMatchObject({ name: 'module', attributes: { capacity: 16 } });
    expect(right.attributes).not.toHaveProperty('memory');
  });
});

describe('a loaner that is held', () => {
  const held = after(ours(), { kind: 'part-reserved', body: { job: JOB } });
  it('says for which job, since when and by whom', () => {
    expect(held).toMatchObject({ reservedFor: JOB, reserved: { at: NOON, by: 'ada' } });
  });
  it('is let go by that job alone', () => {
    expect(after(held, { kind: 'part-released', body: { job: 'job-2' as JobId } }).reservedFor).toBe(JOB);
    expect(after(held, { kind: 'part-released', body: { job: JOB } })).toMatchObject({
      reservedFor: null,
      reserved: null,
    });
  });
  it('and then sold is theirs, under no title and held for nobody', () => {
    const body = { to: OWNER, job: JOB, question: 'q', priceMinor: 100 };
    expect(after(held, { kind: 'title-passed', body })).toMatchObject({
      belongs: { to: 'owner', owner: OWNER },
      title: null,
      reservedFor: null,
      reserved: null,
    });
  });
});
