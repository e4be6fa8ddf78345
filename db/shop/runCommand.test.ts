import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { refuse } from '../../core/commands/kernel/decision.ts';
import { personal } from '../../core/journal/personal.ts';
import { epochMs } from '../../core/time.ts';
import { textIn } from '../../tests/builders/filesIn.ts';
import { looked, ownerKnown, takenIn } from '../../tests/builders/shopEntries.ts';
import {
  accept,
  aShopFolder,
  asked,
  draft,
  edition,
  learntNothing,
  type ShopFolder,
  write,
} from '../../tests/builders/shopFolder.ts';
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

const job = 'job:7';

describe('a command', () => {
  it('is written with who, when, where and in which order', async () => {
    const done = await shop.runCommand(asked({ command: 'c1', by: 'staff-9', device: 'counter' }), () =>
      accept(edition('dark'), takenIn('7'), edition('lit')),
    );
    expect(done).toEqual({ ok: true, seq: 3, firstStream: 'shop', replayed: false });
    const read = await shop.read();
    expect(read.head).toBe(3);
    expect(await read.entries('shop')).toEqual([
      {
        branch: 'main',
        seq: 1,
        stream: 'shop',
        streamSeq: 1,
        at: place.clock.now,
        by: 'staff-9',
        device: 'counter',
        command: 'c1',
        kind: 'model-used',
        v: 1,
        body: { name: 'dark', changes: [] },
      },
      {
        branch: 'main',
        seq: 3,
        stream: 'shop',
        streamSeq: 2,
        at: place.clock.now,
        by: 'staff-9',
        device: 'counter',
        command: 'c1',
        kind: 'model-used',
        v: 1,
        body: { name: 'lit', changes: [] },
      },
    ]);
  });

  it('asked twice is answered as the first time and written once', async () => {
    const question = asked({ command: 'c1', asked: { name: 'notice', what: 'dark' } });
    const decide = () => accept(takenIn('7'));
    const first = await shop.runCommand(question, decide);
    await write(shop, learntNothing);
    const again = await shop.runCommand({ ...question, asked: { what: 'dark', name: 'notice' } }, decide);
    expect(first).toEqual({ ok: true, seq: 1, firstStream: job, replayed: false });
    expect(again).toEqual({ ok: true, seq: 1, firstStream: job, replayed: true });
    expect((await shop.read()).head).toBe(2);
  });

  it('asked twice at the same moment is written once', async () => {
    const question = asked({ command: 'c1' });
    const both = await Promise.all([1, 2, 3].map(() => shop.runCommand(question, () => accept(takenIn('7')))));
    expect(both.map((one) => one.ok && one.replayed).toSorted()).toEqual([false, true, true]);
    expect((await shop.read()).head).toBe(1);
  });

  it('is refused when its id was used for something else', async () => {
    await shop.runCommand(asked({ command: 'c1', asked: { what: 'dark' } }), () => accept(takenIn('7')));
    const other = await shop.runCommand(asked({ command: 'c1', asked: { what: 'lit' } }), () => accept(takenIn('8')));
    expect(other).toEqual({ ok: false, refusal: { refused: 'command-id-used-before', command: 'c1', seq: 1 } });
    expect((await shop.read()).head).toBe(1);
  });

  it('that is refused writes nothing, and its id can be used again', async () => {
    const refused = await shop.runCommand(asked({ command: 'c1' }), () => refuse('part-gone', { part: 'p1' }));
    expect(refused).toEqual({ ok: false, refusal: { refused: 'part-gone', part: 'p1' } });
    expect((await shop.read()).head).toBe(0);
    expect(await shop.runCommand(asked({ command: 'c1' }), () => accept(takenIn('7')))).toMatchObject({
      ok: true,
      replayed: false,
    });
  });

  it('is decided again when a stream it looked at moved on', async () => {
    const seen: number[] = [];
    await write(shop, takenIn('7'));
    const done = await shop.runCommand(asked(), async (read) => {
      const before = await read.version(job);
      seen.push(before);
      if (seen.length < 3) await write(shop, looked(job));
      return accept(looked(job, `${before}`));
    });
    expect(seen).toEqual([1, 2, 3]);
    expect(done).toMatchObject({ ok: true, seq: 4 });
  });

  it('is decided again when it asked the read tables and anything was written', async () => {
    let tries = 0;
    await shop.runCommand(asked(), async (read) => {
      await read.rows((tables) => tables.selectFrom('tag').selectAll().execute());
      if (++tries === 1) await write(shop, learntNothing);
      return accept(takenIn('7'));
    });
    expect(tries).toBe(2);
  });

  it('is not disturbed by what it did not look at', async () => {
    let tries = 0;
    await shop.runCommand(asked(), async (read) => {
      await read.version(job);
      tries += 1;
      await write(shop, takenIn('8'));
      return accept(takenIn('7'));
    });
    expect(tries).toBe(1);
  });

  it('reads the journal as it stood when it began, however long it takes', async () => {
    let tries = 0;
    await shop.runCommand(asked(), async (read) => {
      if (++tries === 1) await write(shop, takenIn('7'), takenIn('8'));
      const both = [await read.version(job), await read.version('job:8')];
      expect(both).toEqual(tries === 1 ? [0, 0] : [1, 1]);
      return accept(looked(job));
    });
    expect(tries).toBe(2);
  });

  it('is carried out in the end, however often others are quicker', async () => {
    const counters = Array.from({ length: 12 }, () =>
      shop.runCommand(asked(), async (read) => {
        const before = await read.version('shop');
        await new Promise((resolve) => setTimeout(resolve, 1));
        return accept(edition(`${before}`));
      }),
    );
    expect((await Promise.all(counters)).every(({ ok }) => ok)).toBe(true);
    const entries = await (await shop.read()).entries('shop');
    expect(entries.map(({ body }) => body)).toEqual(
      [...entries.keys()].map((before) => ({ name: `${before}`, changes: [] })),
    );
  });

  it.each([
    ['of a kind that its stream does not have', draft(job, 'part-moved', {}), { wrong: 'unknown-kind' }],
    ['of a kind that nothing has', draft(job, 'constructor', {}), { wrong: 'unknown-kind' }],
    ['of a later version', { ...looked(job), v: 900 }, { wrong: 'unknown-version' }],
    ['with a body that lacks what its kind says', draft(job, 'could-not-be-reproduced', {}), { at: 'says' }],
    ['with a figure that is none', draft(job, 'worth-told', { worthMinor: Number.NaN }), { at: 'worthMinor' }],
    ['with more in it than its kind says', draft(job, 'reminded', { last: true, name: 'W. Quux' }), { at: '' }],
  ])('is refused with an entry %s, and nothing of it is written', async (_which, entry, facts) => {
    const done = await write(shop, takenIn('7'), entry);
    expect(done).toMatchObject({
      ok: false,
      refusal: { refused: 'entry-not-of-the-table', kind: entry.kind, ...facts },
    });
    expect((await shop.read()).head).toBe(0);
  });

  it.each([
    ['before its stream began', [looked(job)]],
    ['that begins its stream a second time', [takenIn('7'), takenIn('7')]],
    ['before its stream began, in the same command', [looked(job), takenIn('7')]],
  ])('is refused with an entry %s, and nothing of it is written nor sealed', async (_which, entries) => {
    const keys = () => new Database(join(place.folder, 'keys.db'), { readonly: true });
    const done = await write(shop, edition(), ...entries);
    expect(done).toMatchObject({ ok: false, refusal: { refused: 'entry-does-not-follow', stream: job } });
    expect((await shop.read()).head).toBe(0);
    await shop.close();
    const file = keys();
    expect(file.prepare('select count(*) from key').pluck().get()).toBe(0);
    file.close();
  });

  it('is refused where its entry would follow on one that overtook it and cannot be followed', async () => {
    let tries = 0;
    const done = await shop.runCommand(asked(), async () => {
      if (++tries === 1) await write(shop, takenIn('7'));
      return accept(takenIn('7'));
    });
    expect(done).toMatchObject({ ok: false, refusal: { refused: 'entry-does-not-follow', kind: 'taken-in' } });
    expect((await shop.read()).head).toBe(1);
  });

  it('that fails as a defect writes nothing and stops nobody', async () => {
    await expect(
      shop.runCommand(asked(), () => {
        throw new Error('a defect');
      }),
    ).rejects.toThrow('a defect');
    const noText = draft('shop', 'model-used', {
      name: 'ours',
      changes: [{ file: 'steps', path: 'a', after: () => 'no JSON' }],
    });
    await expect(shop.runCommand(asked(), () => accept(noText))).rejects.toThrow(TypeError);
    expect(await write(shop, takenIn('7'))).toMatchObject({ ok: true, seq: 1 });
  });

  it('is dated by the clock as it is, though it was ahead once, and notes that it ran back', async () => {
    await write(shop, edition());
    const first = place.clock.now;
    place.clock.now = epochMs(first - 60_000);
    let decidedAt = 0;
    await shop.runCommand(asked(), (_read, at) => {
      decidedAt = at;
      return accept(edition());
    });
    expect((await (await shop.read()).entries('shop')).map(({ at }) => at)).toEqual([first, first - 60_000]);
    expect(decidedAt).toBe(first - 60_000);
    expect(place.logged).toContainEqual({ event: 'clock-behind', facts: { ms: 60_000, seq: 2 } });
    expect((await shop.verify()).clockRanBack).toBe(1);
    // A minute is what two readings may differ by; more is said on screen.
    expect(shop.standing().notices).toEqual([]);
    place.clock.now = epochMs(first - 3_600_000);
    await write(shop, edition());
    expect(shop.standing().notices).toMatchObject([{ notice: 'clock-behind-journal', ms: 3_540_000 }]);
  });

  it('that took its time is dated no earlier than one that overtook it', async () => {
    await shop.runCommand(asked(), async () => {
      place.clock.now = epochMs(place.clock.now + 90_000);
      await write(shop, learntNothing);
      return accept(edition());
    });
    expect((await (await shop.read()).entries('shop')).map(({ at }) => at)).toEqual([place.clock.now, place.clock.now]);
  });

  it('is refused after the shop was closed', async () => {
    await shop.close();
    expect(await write(shop, edition())).toEqual({ ok: false, refusal: { refused: 'shop-is-closing' } });
  });
});

describe('personal values in an entry', () => {
  const body = {
    name: personal('contact', 'o1', 'Wilhelmina Quux'),
    reach: personal('contact', 'o1', { phone: '+44 1632 960123', mail: null, first: 'phone' }),
    kind: {
      is: 'company',
      orderNumber: 'stays',
      approves: null,
      approvesUpToMinor: null,
      alsoApprove: personal('record', 'o1', [{ name: 'Oskar Quux', upToMinor: null }]),
    },
  };

  it('come back as they went in, and lie sealed on the disk', async () => {
    await write(shop, ownerKnown('o1', { phone: null, mail: null }), draft('owner:o1', 'owner-changed', body));
    expect((await (await shop.read()).entries('owner:o1'))[1]?.body).toEqual(body);
    const onDisk = textIn(place.folder);
    expect(onDisk).toContain('stays');
    expect(onDisk).not.toMatch(/Wilhelmina|960123|Oskar/);
  });

  it('come back after the shop was closed and opened again', async () => {
    await write(shop, ownerKnown('o1', { phone: null, mail: null }), draft('owner:o1', 'owner-changed', body));
    await shop.close();
    shop = await place.opened();
    expect((await (await shop.read()).entries('owner:o1'))[1]?.body).toEqual(body);
  });

  it('may not be imitated', async () => {
    const imitation = { file: 'steps', path: 'a', after: { sealed: 'AAAA', key: 'o1/contact/1' } };
    const edition = draft('shop', 'model-used', { name: 'ours', changes: [imitation] });
    await expect(write(shop, edition)).rejects.toThrow(/sealed field/);
    expect((await shop.read()).head).toBe(0);
  });
});

describe('an entry that somebody changed on the disk', () => {
  it('is not shown as the shop’s word, and leaves the others readable', async () => {
    await write(shop, edition('limit 12000'));
    await write(shop, edition('limit 15000'));
    await shop.close();
    const sqlite = new Database(join(place.folder, 'shop.db'));
    sqlite.exec('drop trigger journal_no_update');
    sqlite.exec(`update journal set bytes = cast('{' || substr(bytes, 3) as blob) where seq = 1`);
    sqlite.close();
    shop = await place.opened();
    const entries = await (await shop.read()).entries('shop');
    expect(entries.map(({ body }) => body)).toEqual([{ name: 'limit 15000', changes: [] }]);
    expect(place.logged).toContainEqual({
      event: 'entry-broken',
      facts: { seq: 1, wrong: { word: 'bytes-do-not-fit-hash' } },
    });
  });
});
