import { join } from 'node:path';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Place } from '../../core/custody/place.ts';
import { partId } from '../../core/ids.ts';
import type { Draft } from '../../core/journal/entry.ts';
import { anyJobEntries } from '../../tests/builders/anyJobEntries.ts';
import {
  inBin,
  inSlot,
  machineKnown,
  onBench,
  ownerKnown,
  paperIssued,
  partKnown,
  partMoved,
  partTagged,
  slotEmptied,
  slotFilled,
  stageEntered,
  takenIn,
} from '../../tests/builders/shopEntries.ts';
import { aShopFolder, draft, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import type { OpenShop } from '../index.ts';

let place: ShopFolder;
let shop: OpenShop;
beforeEach(async () => {
  place = aShopFolder();
  shop = await place.opened();
});
afterEach(async () => {
  await shop.close();
  place.remove();
});

const rows = async <R>(ask: Parameters<Awaited<ReturnType<OpenShop['read']>>['rows']>[0]): Promise<R> =>
  (await (await shop.read()).rows(ask)) as R;

describe('the read tables', () => {
  it('know where a part is and its whole path', async () => {
    await write(shop, partKnown('p1', inBin('B2')), machineKnown('m1'));
    await write(shop, partMoved('p1', inBin('B2'), inSlot('m1', 'A2')), slotFilled('m1', 'A2', 'p1'));
    const path = await rows((tables) =>
      tables
        .selectFrom('part_stay')
        .where('part', '=', partId('p1'))
        .orderBy('since_seq')
        .select(['at', 'holder', 'slot', 'until_seq'])
        .execute(),
    );
    expect(path).toEqual([
      { at: 'bin', holder: null, slot: null, until_seq: 3 },
      { at: 'slot', holder: 'machine:m1', slot: 'A2', until_seq: null },
    ]);
  });

  it('follow a job from stage to stage', async () => {
    await write(shop, takenIn('j1'));
    place.clock.now = (place.clock.now + 60_000) as typeof place.clock.now;
    await write(shop, stageEntered('j1', 'tracing'));
    await write(shop, draft('job:j1', 'promised', { at: 99, p90: 120, told: true }));
    expect(await rows((tables) => tables.selectFrom('job_now').selectAll().execute())).toEqual([
      {
        job: 'j1',
        owner: 'o1',
        machine: 'm1',
        tag: 'K7R4TMX',
        stage: 'tracing',
        stage_since: place.clock.now,
        taken_in: place.clock.now - 60_000,
        promised: 99,
        came_back_from: null,
        first_seq: 1,
        last_seq: 3,
      },
    ]);
  });

  it('hold no personal value', async () => {
    await write(
      shop,
      ownerKnown('o1', { phone: '+44 1632 960123', mail: 'w.quux@example.org' }),
      machineKnown('m1', { serial: 'QX-77-1234' }),
      paperIssued('intake-receipt', 2026, 'R-1'),
    );
    const file = new Database(join(place.folder, 'shop.db'), { readonly: true });
    const tables = file
      .prepare(`select name from sqlite_master where type = 'table' and name not in ('journal', 'sqlite_sequence')`)
      .pluck()
      .all() as string[];
    const everything = JSON.stringify(tables.map((name) => file.prepare(`select * from "${name}"`).all()));
    file.close();
    expect(everything).toContain('m1');
    expect(everything).not.toMatch(/Quux|960123|example|1234|a page/i);
  });
});

describe('what only one may hold is refused with who has it', () => {
  const refused = async (...entries: readonly Draft[]) => {
    const before = (await shop.read()).head;
    const done = await write(shop, ...entries);
    expect((await shop.read()).head).toBe(before);
    return done.ok ? null : done.refusal;
  };

  it('a slot of a machine', async () => {
    await write(
      shop,
      machineKnown('m1'),
      partKnown('p1', inSlot('m1', 'A2')),
      partKnown('p2', inBin('B2')),
      slotFilled('m1', 'A2', 'p1'),
    );
    expect(await refused(partMoved('p2', inBin('B2'), inSlot('m1', 'A2')))).toMatchObject({
      refused: 'slot-already-filled',
      holder: 'machine:m1',
      slot: 'A2',
      has: { part: 'p1' },
    });
    expect(await refused(slotFilled('m1', 'A2', 'p2'))).toMatchObject({
      refused: 'slot-already-filled',
      has: { part: 'p1', since_seq: 4 },
    });
    expect(await refused(slotFilled('m1', 'B2', 'p1'))).toMatchObject({
      refused: 'part-in-two-slots',
      part: 'p1',
      has: { holder: 'machine:m1', slot: 'A2' },
    });
  });

  it('a slot of a rig, which is no machine of that name', async () => {
    await write(shop, partKnown('p1', { at: 'rig', rig: 'm1', slot: 'A2' }), partKnown('p2', inSlot('m1', 'A2')));
    expect(await refused(partKnown('p3', { at: 'rig', rig: 'm1', slot: 'A2' }))).toMatchObject({
      refused: 'slot-already-filled',
      holder: 'rig:m1',
    });
  });

  it('a part that is somewhere else than the move says', async () => {
    await write(shop, partKnown('p1', inBin('B2')));
    expect(await refused(partMoved('p1', onBench('1'), inSlot('m1', 'A2')))).toMatchObject({
      refused: 'part-in-two-places',
      part: 'p1',
      has: { at: 'bin' },
    });
  });

  it('a tag, even one that was taken off', async () => {
    await write(shop, machineKnown('m1', { tag: 'K7R4TMX' }), partKnown('p1', inBin('B2')));
    expect(await refused(partTagged('p1', 'K7R4TMX'))).toMatchObject({
      refused: 'tag-already-bound',
      tag: 'K7R4TMX',
      has: { stream: 'machine:m1' },
    });
    await write(shop, partTagged('p1', 'AAAAAAB'));
    await write(shop, partTagged('p1', null));
    expect(await refused(machineKnown('m2', { tag: 'AAAAAAB' }))).toMatchObject({
      refused: 'tag-already-bound',
      has: { stream: 'part:p1', live: 0 },
    });
  });

  it('a paper’s number, and the place of the paper it supersedes', async () => {
    await write(shop, paperIssued('receipt', 2026, 'R-1'));
    expect(await refused(paperIssued('receipt', 2026, 'R-1'))).toMatchObject({
      refused: 'paper-number-already-used',
      number: 'R-1',
    });
    await write(shop, paperIssued('receipt', 2026, 'R-2', { supersedes: 'R-1' }));
    expect(await refused(paperIssued('receipt', 2026, 'R-3', { supersedes: 'R-1' }))).toMatchObject({
      refused: 'paper-already-superseded',
      has: { number: 'R-2' },
    });
    expect(
      await rows((tables) => tables.selectFrom('paper').where('number', '=', 'R-1').select('superseded_by').execute()),
    ).toEqual([{ superseded_by: 'R-2' }]);
  });
});

/** Places that a random shop uses: two machines with two slots, a bin and a bench. */
const PLACES: readonly Place[] = [
  inSlot('m1', 'A1'),
  inSlot('m1', 'A2'),
  inSlot('m2', 'A1'),
  inBin('B1'),
  onBench('1'),
];
const anyPlace = fc.constantFrom(...PLACES);
const anyPart = fc.constantFrom('p1', 'p2', 'p3', 'p4');
const anyTag = fc.constantFrom('AAAAAAB', 'K7R4TMX', null);
const anyEntries: fc.Arbitrary<readonly Draft[]> = fc.oneof(
  fc.tuple(anyPart, anyPlace, anyTag).map(([part, at, tag]) => [partKnown(part, at, { tag, serial: `SN-${part}` })]),
  fc
    .tuple(anyPart, anyPlace, anyPlace)
    .map(([part, from, to]) => [
      partMoved(part, from, to),
      ...(to.at === 'slot' ? [slotFilled(to.machine, to.slot, part)] : []),
    ]),
  fc.tuple(fc.constantFrom('m1', 'm2'), anyPart).map(([machine, part]) => [slotEmptied(machine, 'A1', part)]),
  fc.tuple(anyPart, anyTag).map(([part, tag]) => [partTagged(part, tag)]),
  fc
    .constantFrom('o1', 'o2')
    .map((owner) => [ownerKnown(owner, { phone: `01632 96000${owner.slice(1)}`, mail: null })]),
  fc.constantFrom('j1', 'j2').map((job) => [takenIn(job)]),
  fc
    .tuple(fc.constantFrom('j1', 'j2'), fc.constantFrom('tracing', 'fitting'))
    .map(([job, stage]) => [stageEntered(job, stage)]),
  anyJobEntries,
  fc
    .integer({ min: 1, max: 4 })
    .map((n) => [paperIssued('receipt', 2026, `R-${n}`, n > 1 ? { supersedes: `R-${n - 1}` } : {})]),
  fc
    .integer({ min: 0, max: 9 })
    .map((n) => [draft('job:j1', 'photographed', { of: 'inside', blob: `blob:${String(n).repeat(64)}` })]),
);

describe('read tables made anew', { timeout: 30_000 }, () => {
  it('are equal, row for row, to those kept up as the shop went on', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyEntries, { minLength: 1, maxLength: 25 }), async (commands) => {
        await write(shop, machineKnown('m1'), machineKnown('m2'));
        for (const entries of commands) await write(shop, ...entries);
        const kept = await shop.digests();
        const { tables, entries } = await shop.rebuild();
        expect(entries).toBe((await shop.read()).head);
        expect(Object.fromEntries(tables.map(({ name, after }) => [name, after]))).toEqual(kept);
        expect(await shop.digests()).toEqual(kept);
      }),
      { numRuns: 20 },
    );
  });

  it('are made anew at opening where a row was changed behind the shop’s back, and it is said', async () => {
    await write(shop, partKnown('p1', inBin('B2')), takenIn('j1'));
    const right = await shop.digests();
    await shop.close();
    const file = new Database(join(place.folder, 'shop.db'));
    file.exec(`update job_now set stage = 'gone-home'`);
    file.close();
    shop = await place.opened();
    expect(shop.standing().notices).toEqual([{ notice: 'read-tables-made-anew', count: 1, first: 'job_now' }]);
    expect(await shop.digests()).toEqual(right);
  });

  it('are made while the shop goes on writing', async () => {
    await Promise.all(Array.from({ length: 40 }, (_, n) => write(shop, partKnown(`p${n}`, inBin('B1')))));
    const [rebuilt] = await Promise.all([
      shop.rebuild(),
      ...Array.from({ length: 40 }, (_, n) => write(shop, partMoved(`p${n}`, inBin('B1'), onBench('1')))),
    ]);
    expect(rebuilt.entries).toBeLessThanOrEqual(80);
    const kept = await shop.digests();
    await shop.rebuild();
    expect(await shop.digests()).toEqual(kept);
    expect(
      await rows((tables) =>
        tables
          .selectFrom('part_stay')
          .where('until_seq', 'is', null)
          .where('at', '=', 'bench')
          .select('part')
          .execute(),
      ),
    ).toHaveLength(40);
  });

  it('are made at opening when a table was lost or its rules are newer', async () => {
    await write(shop, partKnown('p1', inBin('B2')));
    const right = await shop.digests();
    await shop.close();
    const file = new Database(join(place.folder, 'shop.db'));
    file.exec(
      `drop table tag; update projection set version = 0 where name = 'tags'; delete from projection where name = 'part-stays'`,
    );
    file.close();
    shop = await place.opened();
    expect(place.logged.findLast(({ event }) => event === 'read-tables-made')?.facts).toEqual({ count: 2 });
    expect(await shop.digests()).toEqual(right);
  });
});
