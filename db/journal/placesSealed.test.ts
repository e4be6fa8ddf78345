import { afterEach, beforeEach, expect, it } from 'vitest';
import type { PartId } from '../../core/ids.ts';
import { textIn } from '../../tests/builders/filesIn.ts';
import { onBench, ownerKnown, partKnown, partMoved } from '../../tests/builders/shopEntries.ts';
import { aShopFolder, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import { staysOf } from '../reads/lists.ts';
import type { OpenShop } from '../shop/shop.ts';

const parcel = {
  at: 'transit',
  carrier: 'the blue van',
  number: 'NV-4471-88',
  insured: true,
  to: 'Wilhelmina Frost, 9 Quay Street',
} as const;
const typed = [parcel.carrier, parcel.number, parcel.to];

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

const onDisk = () => textIn(place.folder);
const lastPlace = async () => (await staysOf(await shop.read(), 'p1' as PartId)).at(-1)?.place;
const theirs = { ...partKnown('p1', onBench('bench 1')) };

it('whom an owner’s part is sent to lies in no file as it was typed, is read as it was, and goes with the owner', async () => {
  const known = { ...theirs, body: { ...(theirs.body as object), belongs: { to: 'owner', owner: 'o1' } } };
  await write(shop, ownerKnown('o1', { phone: null, mail: null }), known);
  await write(shop, partMoved('p1', onBench('bench 1'), parcel));
  for (const text of typed) expect(onDisk(), text).not.toContain(text);
  expect(await lastPlace()).toEqual(parcel);
  expect((await (await shop.read()).load('part', 'p1'))?.place).toEqual(parcel);
  await shop.eraseOwner('o1', [{ purpose: 'record', erase: true }]);
  expect(await lastPlace()).toEqual({ ...parcel, carrier: '', number: '', to: '' });
});

it('a part of the shop’s own says it in the ledger, and in no read table', async () => {
  await write(shop, theirs, partMoved('p1', onBench('bench 1'), parcel));
  expect(await lastPlace()).toEqual(parcel);
  const table = await (await shop.read()).rows((tables) => tables.selectFrom('part_stay').select('place').execute());
  for (const text of typed) expect(JSON.stringify(table)).not.toContain(text);
});
