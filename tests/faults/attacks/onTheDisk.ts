import { readdirSync, readFileSync, rmSync, statSync, truncateSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ShopFolder } from '../../builders/shopFolder.ts';
import { tampered } from '../../builders/tampered.ts';
import { type Attack, Tally } from '../attack.ts';
import { ACKNOWLEDGED, aShopAtWork, started } from './shopAtWork.ts';

type Deed = (place: ShopFolder) => void;

/** Turns one bit of a file, in one of the bytes that say something: the share-th of those that are not zero. */
const flip = (path: string, share: number) => {
  const bytes = readFileSync(path);
  const saying = [...bytes.keys()].filter((at) => bytes[at] !== 0);
  const at = saying[Math.floor(saying.length * share)] ?? 0;
  bytes[at] = (bytes[at] ?? 0) ^ 0x10;
  writeFileSync(path, bytes);
};
const inShop = (place: ShopFolder) => join(place.folder, 'shop.db');

const change =
  (file: string, statements: string): Deed =>
  (place) =>
    tampered(join(place.folder, file), statements);

/** Shares of a file, from its begin to its end: three, or a hundred in the long form. */
const shares = (short: boolean): readonly number[] =>
  Array.from({ length: short ? 3 : 100 }, (_, index) => (index + 0.5) / (short ? 3 : 100));

/**
 * Does something to a shop's files, starts it, and holds what it shows and says against what was acknowledged: every
 * entry is there, or what is missing is said.
 */
async function tried(tally: Tally, deed: Deed): Promise<void> {
  const place = await aShopAtWork();
  try {
    deed(place);
    const { shop, refusal } = await started(place);
    if (!shop) {
      tally.survived(refusal?.refused ?? '');
      return;
    }
    const { entries } = await shop.lookThrough();
    await shop.blobs.sweep();
    const missing = (refusal?.refused === 'entries-missing' && refusal.missing) || 0;
    const { notices } = shop.standing();
    const said = [refusal?.refused, ...notices.map(({ notice }) => notice)].filter((word) => word !== undefined);
    const whole = entries + missing >= ACKNOWLEDGED || notices.some(({ notice }) => notice === 'entries-broken');
    const photographs = photographsThere(place);
    if (whole && photographs) tally.survived(said.join(' ') || 'nothing: all is there');
    else tally.lost(said.join(' ') || 'nothing');
    await shop.close();
  } finally {
    place.remove();
  }
}

/** The one sealed photograph is never swept, and what else lies among the files is none. */
function photographsThere(place: ShopFolder): boolean {
  const files = readdirSync(join(place.folder, 'blobs'), { recursive: true }).map(String);
  return files.some((name) => /[0-9a-f]{64}$/.test(name));
}

const attack = (name: string, deeds: (short: boolean) => readonly Deed[]): Attack => ({
  name,
  run: async ({ short }) => {
    const tally = new Tally();
    for (const deed of deeds(short)) await tried(tally, deed);
    return tally.outcome();
  },
});

const remove =
  (...files: readonly string[]): Deed =>
  (place) => {
    for (const file of files) rmSync(join(place.folder, file), { force: true });
  };

export const ON_THE_DISK: readonly Attack[] = [
  attack('write-ahead log deleted', () => [remove('shop.db-wal')]),
  attack('write-ahead log cut', (short) =>
    shares(short).map(
      (share): Deed =>
        (place) => {
          const path = `${inShop(place)}-wal`;
          truncateSync(path, Math.floor(statSync(path).size * share));
        },
    ),
  ),
  attack('one bit of the write-ahead log', (short) =>
    shares(short).map(
      (share): Deed =>
        (place) =>
          flip(`${inShop(place)}-wal`, share),
    ),
  ),
  attack('journal file deleted', () => [remove('shop.db', 'shop.db-wal', 'shop.db-shm')]),
  attack('key file deleted', () => [remove('keys.db')]),
  attack('wallet deleted', () => [remove('wallet.key')]),
  attack('last acknowledged number deleted', () => [remove('last-acknowledged')]),
  attack('one bit of the key file', (short) =>
    shares(short).map(
      (share): Deed =>
        (place) =>
          flip(join(place.folder, 'keys.db'), share),
    ),
  ),
  attack('one bit of the journal file', (short) =>
    shares(short).map(
      (share): Deed =>
        (place) =>
          flip(inShop(place), share),
    ),
  ),
  attack('an entry changed', () => [
    change('shop.db', `update journal set bytes = cast('{' || substr(bytes, 3) as blob) where seq = 7`),
    change('shop.db', 'update journal set hash = zeroblob(32) where seq = 7'),
    change('shop.db', 'delete from journal where seq = 7'),
  ]),
  attack('the tail cut, the sealed heads too', () => [
    (place) => {
      change('shop.db', 'delete from command where first_seq > 5; delete from journal where seq > 5')(place);
      change('keys.db', 'delete from head where seq > 5')(place);
    },
  ]),
  attack('a key changed', () => [change('keys.db', 'update key set wrapped = zeroblob(60)')]),
  attack('a key deleted', () => [change('keys.db', `delete from key where owner = 'o2'`)]),
  attack('a sealed head changed', () => [change('keys.db', 'update head set hash = zeroblob(32)')]),
  attack('rows of read tables deleted', () =>
    ['job_now', 'recognition', 'named_blob'].map((table) => change('shop.db', `delete from ${table}`)),
  ),
  attack('blob list emptied, its files old', () => [
    (place) => {
      change('shop.db', 'delete from named_blob')(place);
      for (const file of readdirSync(join(place.folder, 'blobs'), { recursive: true }).map(String))
        utimesSync(join(place.folder, 'blobs', file), 1, 1);
    },
  ]),
];
