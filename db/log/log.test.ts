import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { personal } from '../../core/journal/personal.ts';
import { ownerKnown } from '../../tests/builders/shopEntries.ts';
import { accept, aShopFolder, asked, draft, type ShopFolder, write } from '../../tests/builders/shopFolder.ts';
import { fileLog, fileWallet, isOpenRefusal, openShop } from '../index.ts';
import { errorFacts, word } from './log.ts';

let place: ShopFolder;
beforeEach(() => {
  place = aShopFolder();
});
afterEach(() => place.remove());

const logPath = () => join(place.folder, 'service.log');
const log = () => fileLog(logPath(), () => place.clock.now);
const lines = () =>
  readFileSync(logPath(), 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as unknown);

describe('the log', () => {
  it('writes one line an event, with the time and what the code says of it', () => {
    log()('migrated', { from: 10, to: 20, whole: true, why: word('update') });
    expect(lines()).toEqual([
      { at: '2026-03-02T09:00:00.000Z', event: 'migrated', from: 10, to: 20, whole: true, why: 'update' },
    ]);
  });

  it('says of an error its class, code and place, never its message', () => {
    const error = Object.assign(new TypeError('No such owner: Wilhelmina Quux'), { code: 'E_OWNER' });
    log()('failed', errorFacts(error));
    expect(lines()).toEqual([
      expect.objectContaining({
        event: 'failed',
        error: 'TypeError',
        code: 'E_OWNER',
        at: expect.stringMatching(/log\.test\.ts:\d+/),
      }),
    ]);
    expect(readFileSync(logPath(), 'utf8')).not.toContain('Wilhelmina');
  });

  it('stops nothing when it cannot be written', () => {
    expect(() => fileLog(join(place.folder, 'nowhere', 'service.log'), () => place.clock.now)('opened')).not.toThrow();
  });

  it('holds no personal value after a day of ordinary and failed work', async () => {
    const open = () =>
      openShop({
        folder: place.folder,
        branch: 'main',
        clock: () => place.clock.now,
        wallet: fileWallet(place.walletPath),
        log: log(),
      });
    const shop = await open();
    if (isOpenRefusal(shop)) throw new Error(shop.refused);
    const name = personal('contact', 'o1', 'Wilhelmina Quux');
    await write(shop, ownerKnown('o1', { phone: '01632 960123', mail: 'w.quux@example.org' }));
    await shop
      .runCommand(asked({ asked: { name: 'Wilhelmina Quux' } }), () =>
        accept(draft('owner:o1', 'owner-changed', { name, bad: Number.NaN })),
      )
      .catch(() => {});
    place.clock.now = (place.clock.now - 5_000) as typeof place.clock.now;
    await write(shop, draft('owner:o1', 'owner-changed', { name }));
    await shop.eraseOwner('o1', [{ purpose: 'contact', erase: true }]);
    expect(await open()).toMatchObject({ refused: 'held-by-another' });
    await shop.close();
    const text = readFileSync(logPath(), 'utf8');
    expect(lines().map((line) => (line as { event: string }).event)).toEqual(
      expect.arrayContaining(['read-tables-made', 'clock-behind', 'keys-destroyed', 'not-opened']),
    );
    expect(text).not.toMatch(/quux|wilhelmina|960123|example\.org/i);
  });
});
