import { expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import type { PartId } from '../../core/ids.ts';
import { wallSheet } from '../../electron/service/desk/sheets/wallSheet.ts';
import { aDesk } from '../builders/desk.ts';

it('a rig that was not among the shop’s is one as soon as it is known, and a module of ours goes into it', async () => {
  const desk = await aDesk();
  const wall = async () => wallSheet(await desk.shop.read(), desk.folder.clock.now);
  await desk.ask('openShop', { settings: { ...shopOf.settings, rigs: [] }, staff: shopOf.staff }, 'mina');
  await desk.ask('knowRig', { ...shopOf.rig, called: 'rig by the window' });
  expect((await wall()).rigs).toMatchObject([{ id: shopOf.rig.rig, called: 'rig by the window', inside: {} }]);
  const from = { at: 'bin', bin: 'B1' };
  const { firstStream } = await desk.ask('knowPart', {
    tag: null,
    kind: 'dimm',
    name: 'Palewater 8 GB',
    attributes: { memory: 'DDR4' },
    standing: { is: 'unproved', why: 'just came' },
    place: from,
    valueMinor: 900,
  });
  const part = firstStream.slice('part:'.length) as PartId;
  await desk.ask('moveShopPart', { part, from, to: { at: 'rig', rig: shopOf.rig.rig, slot: 'A2' }, says: null });
  expect((await wall()).rigs[0]?.inside).toEqual({ A2: part });
  expect(await desk.refused('knowRig', shopOf.rig)).toMatchObject({ refused: 'rig-known' });
  await desk.close();
});
