import { afterEach, describe, expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { Tag } from '../../core/custody/part.ts';
import { formatTag } from '../../core/custody/tag.ts';
import type { JobId, PartId } from '../../core/ids.ts';
import { aDesk, type Desk } from '../../tests/builders/desk.ts';
import { taggedMachine, takingIn } from '../../tests/builders/takingIn.ts';
import { loadView } from '../service/desk/loadView.ts';
import { outOfOurs, thenAndNow } from '../service/desk/sheets/custodyReads.ts';
import { parts } from './parts.ts';

const DAY = 24 * 60;
let desk: Desk;
afterEach(() => desk.folder.remove());

/** A machine with one module of its own in A1; the shop's module was tried in A2 and then lent to the owner. */
async function lentOut() {
  desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  const taken = await desk.ask('takeIn', takingIn({ machine: taggedMachine, limitMinor: 20_000 }));
  const job = taken.firstStream.slice('job:'.length) as JobId;
  const slot = (id: string, order: number) => ({ id, takes: 'dimm', order, source: 'by-hand' });
  await desk.ask('writeCensus', {
    job,
    slots: [slot('A1', 1), slot('A2', 2)],
    parts: [{ slot: 'A1', kind: 'dimm', name: 'their module', attributes: {}, serial: null, source: 'by-hand' }],
    gaps: [],
  });
  const answers = { open: 'yes', 'own-parts-in': 'yes' };
  await desk.ask('signSheet', { job, answers, signed: { name: story.owner.name, drawn: null, contentHash: null } });
  const made = await desk.ask('knowPart', {
    tag: null,
    kind: 'dimm',
    name: 'our module',
    attributes: {},
    standing: { is: 'trial-grade', scopes: ['starts'] },
    place: { at: 'bin', bin: 'W8' },
    valueMinor: 2000,
  });
  const ours = made.firstStream.slice('part:'.length) as PartId;
  const machine = (await desk.view(job)).job?.machine;
  if (!machine) throw new Error('no machine');
  const inA2 = { at: 'slot', machine, slot: 'A2' };
  const bin = { at: 'bin', bin: 'W8' };
  desk.pass(5);
  await desk.ask('movePart', { job, part: ours, from: bin, to: inA2, why: 'hand', says: null });
  return { job, ours, machine, inA2, bin };
}

const read = async () => desk.shop.read();
const now = () => desk.folder.clock.now;

describe('what the ledger answers at once', () => {
  it('what was inside at taking-in against now, and whose', async () => {
    const { machine } = await lentOut();
    expect((await thenAndNow(await read(), machine, now()))?.slots).toMatchObject([
      { slot: 'A1', same: true, now: { name: 'their module', whose: 'owner' } },
      { slot: 'A2', same: false, came: null, now: { name: 'our module', whose: 'shop' } },
    ]);
    await desk.shop.close();
  });

  it('what is out, with whom and since when; past its day first', async () => {
    const { job, ours, inA2 } = await lentOut();
    expect(await outOfOurs(await read(), now())).toMatchObject([
      { part: ours, as: 'on-trial', called: story.owner.name, holder: story.machine.called, by: 'Bram Ostler' },
    ]);
    await desk.ask('movePart', { job, part: ours, from: inA2, to: { at: 'bin', bin: 'W8' }, why: 'hand', says: null });
    expect(await outOfOurs(await read(), now())).toEqual([]);
    const returnBy = now() + DAY * 60_000;
    await desk.ask('lendPart', { job, part: ours, slot: null, returnBy, to: story.owner.name });
    expect(await outOfOurs(await read(), now())).toMatchObject([{ as: 'lent', returnBy, overdue: false }]);
    desk.pass(2 * DAY);
    expect(await outOfOurs(await read(), now())).toMatchObject([{ as: 'lent', overdue: true }]);
    await desk.shop.close();
  });
});

it('says it on the command line, beside the open app: where, the whole path, what is inside, what is out', async () => {
  const { job, ours } = await lentOut();
  const { parts: known } = await loadView(await read(), { job, parts: [ours] }, now());
  const tag = formatTag(known.get(ours)?.tag as Tag);
  const ask = async (...args: string[]) => {
    const out: string[] = [];
    const err: string[] = [];
    const asked = [...args, '--data', desk.folder.folder, '--wallet', desk.folder.walletPath];
    const io = { out: (l: string) => void out.push(l), err: (l: string) => void err.push(l) };
    const code = await parts.run(asked, { ...io, readFile: () => Promise.reject(new Error('no file')) });
    return { code, out, err };
  };
  const inMachine = `in ${story.machine.called}, A2, for ${story.owner.name}, by Bram Ostler`;
  expect((await ask('where', tag)).out).toEqual([expect.stringContaining(inMachine)]);
  expect((await ask('path', tag)).out).toEqual([
    expect.stringContaining('in bin W8, by Bram Ostler'),
    expect.stringContaining(inMachine),
  ]);
  expect((await ask('inside', story.tag)).out).toEqual([
    'A1  their module, as it came',
    'A2  our module (SHOP); was empty',
  ]);
  expect((await ask('out')).out).toEqual([
    expect.stringContaining(`${tag}  our module: in ${story.machine.called}, A2`),
  ]);
  expect(await ask('where', 'K7R4TMX')).toMatchObject({ code: 2, out: [] });
  expect(await ask('where', story.tag)).toMatchObject({ code: 2, out: [] });
  expect(await ask('lost')).toMatchObject({ code: 2, out: [] });
  await desk.shop.close();
  expect((await ask('where', tag)).out).toEqual([expect.stringContaining(inMachine)]);
});
