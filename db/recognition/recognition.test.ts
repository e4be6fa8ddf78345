import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { personal } from '../../core/journal/personal.ts';
import { inBin, machineKnown, ownerKnown, partKnown } from '../../tests/builders/shopEntries.ts';
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

describe('a returning owner', () => {
  it.each(['+44 1632 960123', '01632 960123', '0044 (1632) 960-123', '01632/960 123'])(
    'is recognised by their phone number, written %s',
    async (typed) => {
      await write(shop, ownerKnown('o1', { phone: '+44 1632 960123', mail: null }));
      expect(await shop.recognise('phone', typed)).toEqual(['owner:o1']);
    },
  );

  it('is recognised by their mail address, however it is spelled', async () => {
    await write(shop, ownerKnown('o1', { phone: null, mail: 'W.Quux@Example.org' }));
    expect(await shop.recognise('mail', ' w.quux@example.ORG ')).toEqual(['owner:o1']);
    expect(await shop.recognise('mail', 'quux@example.org')).toEqual([]);
  });

  it('is one of several when a household shares a number', async () => {
    await write(
      shop,
      ownerKnown('o2', { phone: '01632 960123', mail: null }),
      ownerKnown('o1', { phone: '01632 960123', mail: null }),
    );
    expect(await shop.recognise('phone', '01632 960123')).toEqual(['owner:o1', 'owner:o2']);
  });

  it('is recognised by the old number and the new', async () => {
    await write(shop, ownerKnown('o1', { phone: '01632 960123', mail: null }));
    await write(
      shop,
      draft('owner:o1', 'owner-changed', {
        reach: personal('contact', 'o1', { phone: '01632 960777', mail: null, first: 'phone' }),
      }),
    );
    expect(await shop.recognise('phone', '01632 960123')).toEqual(['owner:o1']);
    expect(await shop.recognise('phone', '01632 960777')).toEqual(['owner:o1']);
  });

  it.each([
    ['phone', '123'],
    ['phone', 'none'],
    ['mail', 'no address'],
    ['mail', ''],
  ] as const)('is not recognised by a %s that says nothing: %s', async (kind, text) => {
    await write(shop, ownerKnown('o1', { phone: text, mail: text }));
    expect(await shop.recognise(kind, text)).toEqual([]);
  });
});

describe('a machine or part', () => {
  it('is recognised by its serial, with or without dashes', async () => {
    await write(
      shop,
      machineKnown('m1', { serial: 'QX-77-1234' }),
      partKnown('p1', inBin('B1'), { serial: 'sn 0815 a' }),
    );
    expect(await shop.recognise('serial', 'qx771234')).toEqual(['machine:m1']);
    expect(await shop.recognise('serial', 'SN0815A')).toEqual(['part:p1']);
  });

  it.each(['To Be Filled By O.E.M.', 'Default string', '00000000', 'N/A', '-', 'System Serial Number'])(
    'is not recognised by the filler "%s"',
    async (filler) => {
      await write(shop, machineKnown('m1', { serial: filler }), machineKnown('m2', { serial: filler }));
      expect(await shop.recognise('serial', filler)).toEqual([]);
    },
  );
});
