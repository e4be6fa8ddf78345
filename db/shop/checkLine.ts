import { z } from 'zod';
import { sameBytes } from '../../core/journal/chain.ts';
import { textOfStored } from '../journal/storedBytes.ts';
import { headIsGenuine } from '../seal/heads.ts';
import type { KeyFile } from '../seal/keyFile.ts';
import type { ShopKeys } from '../seal/shopKeys.ts';
import type { Sqlite } from '../sqlite/connection.ts';
import { type Mark, readMark } from './lastAcknowledged.ts';
import { type Mismatch, Refused } from './openRefusal.ts';
import type { ShopPaths } from './paths.ts';

export type LinePlace = {
  readonly paths: ShopPaths;
  readonly branch: string;
  readonly keyFile: KeyFile;
  readonly shopKeys: ShopKeys;
  /** The mark kept on another place than the shop's folder; null where there is none. */
  readonly apart: string | null;
};

/**
 * Holds a journal against what was acknowledged and sealed before: the last acknowledged entry, kept in the folder and
 * apart from it, the last sealed head, the number of keys that were made, and the names of shop and epoch that every
 * file bears. Reads only.
 * @throws {Refused} With the first mismatch.
 */
export function checkLine(sqlite: Sqlite, place: LinePlace): void {
  const mismatch = mismatchOf(sqlite, place);
  if (mismatch) throw new Refused(mismatch);
}

/** The first thing that is not as it was acknowledged and sealed; null when all is there. */
export function mismatchOf(
  sqlite: Sqlite,
  place: LinePlace,
): Mismatch | { refused: 'keys-of-another-shop'; path: string } | null {
  const { paths, keyFile, shopKeys } = place;
  const meta = (name: string) => {
    const value = sqlite.prepare('select value from meta where name = ?').pluck().get(name);
    return typeof value === 'string' ? value : null;
  };
  const shopId = meta('shop-id');
  if (shopId !== null && shopId !== keyFile.note('shop-id'))
    return { refused: 'keys-of-another-shop', path: paths.keys };
  const epochs = epochsOf(keyFile);
  const epoch = meta('epoch');
  if (epoch !== null && !epochs.has(epoch)) return { refused: 'files-of-two-ages', path: paths.keys };
  for (const path of markPaths(place)) {
    const mark = readMark(path, shopKeys.heads);
    if (mark === 'absent' || mark === 'damaged' || mark.shop !== keyFile.note('shop-id')) continue;
    const wrong = epochs.has(mark.epoch)
      ? againstMark(sqlite, place, mark)
      : ({ refused: 'files-of-two-ages', path } as const);
    if (wrong) return wrong;
  }
  return againstHead(sqlite, place) ?? againstKeys(sqlite, place, meta('keys-made'));
}

const markPaths = ({ paths, apart }: Pick<LinePlace, 'paths' | 'apart'>): readonly string[] => [
  paths.last,
  ...(apart ? [apart] : []),
];

/** The files with the last acknowledged number that do not hold together. */
export const damagedMarks = (place: Pick<LinePlace, 'paths' | 'apart' | 'shopKeys'>): readonly string[] =>
  markPaths(place).filter((path) => readMark(path, place.shopKeys.heads) === 'damaged');

/** The epoch that is, and the one that is being begun. */
export const epochsOf = (keyFile: KeyFile): ReadonlySet<string> =>
  new Set([keyFile.note('epoch'), keyFile.note('next-epoch')].filter((epoch) => epoch !== null));

function againstMark(sqlite: Sqlite, place: LinePlace, mark: Mark): Mismatch | null {
  const { paths, branch, keyFile } = place;
  const wrong = entryAt(sqlite, place, mark.seq, Buffer.from(mark.hash, 'hex'));
  if (wrong) return wrong;
  const sealed = keyFile.lastHead(branch)?.seq ?? 0;
  const lacking = Math.max(mark.keys - keyFile.made(), sealed < mark.head ? 1 : 0);
  return lacking > 0 ? { refused: 'keys-older-than-journal', path: paths.keys, missing: lacking } : null;
}

function againstHead(sqlite: Sqlite, place: LinePlace): Mismatch | null {
  const head = place.keyFile.lastHead(place.branch);
  if (!head) return null;
  if (!headIsGenuine(place.shopKeys.heads, head))
    return { refused: 'sealed-head-forged', path: place.paths.keys, seq: head.seq };
  return entryAt(sqlite, place, head.seq, head.hash);
}

function entryAt(sqlite: Sqlite, { paths, branch }: LinePlace, seq: number, hash: Uint8Array): Mismatch | null {
  if (seq === 0) return null;
  const last = Number(sqlite.prepare('select coalesce(max(seq), 0) from journal where branch = ?').pluck().get(branch));
  if (last < seq) return { refused: 'entries-missing', path: paths.shop, last, acknowledged: seq, missing: seq - last };
  const found = sqlite.prepare('select hash from journal where branch = ? and seq = ?').pluck().get(branch, seq);
  return found instanceof Uint8Array && sameBytes(found, hash)
    ? null
    : { refused: 'another-journal', path: paths.shop, seq };
}

function againstKeys(sqlite: Sqlite, { paths, keyFile }: LinePlace, made: string | null): Mismatch | null {
  const missing = made === null ? unknownKeys(sqlite, keyFile).length : Math.max(0, Number(made) - keyFile.made());
  return missing > 0 ? { refused: 'keys-older-than-journal', path: paths.keys, missing } : null;
}

/** Names of keys that entries are sealed under and that this key file never knew. Reads the whole journal. */
export function unknownKeys(sqlite: Sqlite, keyFile: KeyFile): readonly string[] {
  const names = new Set<string>();
  for (const bytes of sqlite.prepare('select bytes from journal').pluck().iterate()) {
    if (!(bytes instanceof Uint8Array)) continue;
    for (const [, name] of textOrNone(bytes).matchAll(SEALED_UNDER)) if (name) names.add(name);
  }
  return [...names].map((name) => z.string().parse(JSON.parse(`"${name}"`))).filter((name) => !keyFile.knows(name));
}

/** Bytes that are damaged name no key. */
function textOrNone(bytes: Uint8Array): string {
  try {
    return textOfStored(bytes);
  } catch {
    return '';
  }
}

/** A sealed field as canonical JSON writes it, packed or not. */
const SEALED_UNDER = /"key":"((?:[^"\\]|\\.)*)",(?:"packed":"\w+",)?"sealed":"/g;
