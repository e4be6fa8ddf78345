import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { OwnerId } from '../../../core/ids.ts';
import { DAY_MS, type EpochMs, epochMs } from '../../../core/time.ts';
import { fileWallet, isOpenRefusal, makeBackup, type OpenShop, openShop } from '../../../db/index.ts';
import { filesIn } from '../../../tests/builders/filesIn.ts';
import { anOrderedJob } from '../../../tests/builders/orderedJob.ts';
import { learntNothing, write } from '../../../tests/builders/shopFolder.ts';
import { runDemo } from '../../cli/demo/runDemo.ts';
import { carryOut } from '../desk/carryOut.ts';
import { openDrafts } from '../desk/drafts.ts';
import type { Tools } from '../desk/tools.ts';
import { openEngine } from '../openEngine.ts';
import { openTools } from '../openTools.ts';
import { personExport } from './personExport.ts';
import { personSheet, personsDue } from './personSheet.ts';
import { openRetention } from './retention.ts';

let around: string;
let shop: OpenShop;
let tools: Tools;
let owner: OwnerId;
let home: EpochMs;
let now: EpochMs;
const engine = openEngine();

async function opened(): Promise<OpenShop> {
  const found = await openShop({
    folder: join(around, 'shop'),
    branch: 'main',
    clock: () => now,
    wallet: fileWallet(join(around, 'wallet.key')),
    log: () => undefined,
  });
  if (isOpenRefusal(found)) throw new Error(JSON.stringify(found));
  return found;
}
const told = mkdtempSync(join(tmpdir(), 'knowngood-told-'));
beforeAll(async () => {
  const kept = { data: join(told, 'shop'), wallet: join(told, 'wallet.key') };
  const { ended } = await runDemo({ out: null, machine: null, print: () => undefined, kept });
  if (!ended?.job.handover) throw new Error('not handed over');
  owner = ended.job.owner;
  home = ended.job.handover.at;
}, 90_000);
afterAll(async () => {
  await engine.end();
  rmSync(told, { recursive: true, force: true });
});
beforeEach(async () => {
  around = mkdtempSync(join(tmpdir(), 'knowngood-persons-'));
  cpSync(told, around, { recursive: true });
  now = home;
  shop = await opened();
  tools = openTools(engine, () => null);
});
afterEach(async () => {
  await shop.close();
  rmSync(around, { recursive: true, force: true });
});

const after = (days: number) => {
  now = epochMs(home + days * DAY_MS);
};
/** Work on three days up to now, so that the journal itself says that time went by. */
async function worked() {
  const today = now;
  for (const back of [2, 1, 0]) {
    now = epochMs(today - back * DAY_MS);
    await write(shop, learntNothing);
  }
}
const asks = (asked: boolean) =>
  carryOut(shop, tools, 'window', {
    command: `erase-${now}-${asked}`,
    by: 'bram',
    name: 'eraseOwner',
    input: { owner, asked },
  });
const sheet = async () => personSheet(await shop.read(), shop, owner, now);
const retention = () =>
  openRetention({
    shop,
    tools,
    clock: () => now,
    afterErasure: async () => undefined,
    tellDefect: (_what, error) => {
      throw error;
    },
  });

/** Every text that stands in a personal value, as the export has it. */
async function valuesHeld(): Promise<ReadonlySet<string>> {
  const made = await personExport(shop, await shop.read(), owner, now);
  const found = new Set<string>();
  const texts = (value: unknown): void => {
    if (typeof value === 'string') found.add(value);
    else if (value && typeof value === 'object') Object.values(value).forEach(texts);
  };
  const walk = (value: unknown): void => {
    if (!value || typeof value !== 'object') return;
    if ('personal' in value && 'value' in value) texts(value.value);
    else Object.values(value).forEach(walk);
  };
  walk(made?.all.streams);
  return new Set([...found].filter((text) => text.length >= 5 && !/^(person|phone|yes|no)$/.test(text)));
}

/** What happened, without what was said. */
async function kindsHeld(): Promise<readonly string[]> {
  const made = await personExport(shop, await shop.read(), owner, now);
  return (made?.all.streams ?? []).flatMap(({ entries }) => entries.map(({ kind }) => kind)).toSorted();
}

/** Everything that lies in the shop's folder and beside it. */
const everyFile = () => filesIn(around);

function liesIn(text: string): readonly string[] {
  const ways = [
    Buffer.from(text, 'utf8'),
    Buffer.from(text, 'utf16le'),
    Buffer.from(JSON.stringify(text).slice(1, -1)),
  ];
  return everyFile().flatMap(({ name, bytes }) =>
    ways.some((way) => bytes.includes(way)) ? [`${name}: ${text}`] : [],
  );
}

describe('what is held of an owner', { timeout: 60_000 }, () => {
  it('is handed out whole: every entry about them for machines, and their papers to be read', async () => {
    const made = await personExport(shop, await shop.read(), owner, now);
    const values = await valuesHeld();
    expect(values.size).toBeGreaterThan(30);
    const text = JSON.stringify(made?.all);
    for (const said of ['Judith Amberley']) expect(text).toContain(said);
    expect(made?.files.filter(({ name }) => name.endsWith('.pdf')).length).toBeGreaterThan(5);
    expect(made?.all.files).toEqual(made?.files.map(({ name }) => name));
    expect(await personExport(shop, await shop.read(), 'nobody' as OwnerId, now)).toBeNull();
  });

  it('goes when they ask for it; their bills stay until law’s own time is over, and then go too', async () => {
    after(1);
    expect(await sheet()).toMatchObject({
      goes: expect.arrayContaining(['contact', 'signature']),
      stays: [{ purpose: 'record' }],
    });
    expect(await asks(true)).toMatchObject({ ok: true });
    expect(shop.held(owner)).toEqual(['record']);
    const until = Date.UTC(2037, 0, 1);
    expect(await sheet()).toMatchObject({ name: null, goes: [], stays: [{ purpose: 'record', why: 'bills', until }] });
    const { entries = [] } = (await personExport(shop, await shop.read(), owner, now))?.all.streams[0] ?? {};
    expect(entries.at(-1)).toMatchObject({ kind: 'owner-erased', body: { asked: true } });
    now = epochMs(until + DAY_MS);
    await worked();
    expect(await retention().look()).toBe(1);
    expect(shop.held(owner)).toEqual([]);
  });

  it('lies in no file afterwards, and can be read nowhere: searched for every value that was typed', async () => {
    const [values, kinds] = [await valuesHeld(), await kindsHeld()];
    expect(await shop.recognise('phone', '07700 900 143')).toHaveLength(1);
    const files = openDrafts(shop, join(around, 'shop', 'drafts.json'));
    await files.save('taking-in', JSON.stringify({ name: [...values][0] }));
    await files.save('taking-in', null);
    now = epochMs(Date.UTC(2038, 0, 1));
    expect(await asks(true)).toMatchObject({ ok: true });
    expect(shop.held(owner)).toEqual([]);
    mkdirSync(join(around, 'disk'));
    const made = await makeBackup({
      folder: join(around, 'shop'),
      branch: 'main',
      wallet: fileWallet(join(around, 'wallet.key')),
      clock: () => now,
      to: join(around, 'disk', 'later.backup'),
      key: join(around, 'disk', 'the.keys'),
    });
    expect(made).toMatchObject({ lacking: 0 });
    expect([...values].flatMap(liesIn)).toEqual([]);
    await shop.close();
    shop = await opened();
    expect([...values].flatMap(liesIn)).toEqual([]);
    expect([...(await valuesHeld())]).toEqual([]);
    expect(await shop.recognise('phone', '07700 900 143')).toEqual([]);
    expect(await kindsHeld()).toEqual([...kinds, 'owner-erased'].toSorted());
  });

  it('stands on the list a week before, and goes by itself on its day', async () => {
    after(80);
    await worked();
    expect(await personsDue(await shop.read(), shop, now, 7)).toEqual([]);
    expect(await retention().look()).toBe(0);
    after(86);
    await worked();
    const waiting = retention();
    expect(await waiting.look()).toBe(0);
    expect(waiting.notices()).toEqual([{ notice: 'erasures-due', count: 1, days: 7 }]);
    expect(await asks(false)).toMatchObject({ ok: false, refusal: { refused: 'period-not-over' } });
    after(92);
    await worked();
    expect(await retention().look()).toBe(1);
    expect(shop.held(owner)).toEqual(['record']);
    expect(await retention().look()).toBe(0);
    expect(await personsDue(await shop.read(), shop, now, 7)).toEqual([]);
  });

  it('does not go by itself on the word of a clock that was set years ahead', async () => {
    after(3650);
    await write(shop, learntNothing);
    expect(await retention().look()).toBe(0);
    expect(shop.held(owner)).toContain('contact');
  });

  it('goes at the next start, where the start before was cut short between the word and the deed', async () => {
    const cut = shop.erasing(owner, async () => {
      const done = await shop.runCommand(
        { command: 'cut' as never, by: 'bram' as never, device: 'window', asked: null },
        () => ({
          ok: true,
          entries: [
            {
              stream: `owner:${owner}`,
              kind: 'owner-erased',
              v: 1,
              body: { asked: true, erased: ['contact'], kept: [] },
            },
          ],
        }),
      );
      if (done.ok) throw new Error('pulled the plug');
      return done;
    });
    await expect(cut).rejects.toThrow('pulled the plug');
    expect(shop.held(owner)).toContain('contact');
    await shop.close();
    shop = await opened();
    expect(shop.held(owner)).not.toContain('contact');
    expect(shop.held(owner)).toContain('signature');
  });

  it('stays while their machine is here: the job is named, and nothing is changed', async () => {
    const at = await anOrderedJob();
    const { owner: theirs } = await at.now();
    const before = at.desk.shop.held(theirs);
    expect(await at.desk.tried('eraseOwner', { owner: theirs, asked: true })).toMatchObject({
      ok: false,
      refusal: { refused: 'machine-is-here', jobs: [at.job] },
    });
    expect(at.desk.shop.held(theirs)).toEqual(before);
    expect(await personSheet(await at.desk.shop.read(), at.desk.shop, theirs, now)).toMatchObject({
      open: [at.job],
      goes: [],
    });
    await at.desk.close();
  });
});
