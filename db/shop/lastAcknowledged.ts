import { timingSafeEqual } from 'node:crypto';
import { closeSync, fdatasync, fdatasyncSync, mkdirSync, openSync, readSync, statSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';
import { keyedDigest } from '../seal/shopKeys.ts';

/**
 * How far the shop had come when a command was last acknowledged: which line of which shop, the entry and its hash, how
 * many keys had been made, the last sealed head.
 */
const zMark = z.strictObject({
  shop: z.string(),
  epoch: z.string(),
  seq: z.int().min(0),
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  keys: z.int().min(0),
  head: z.int().min(0),
});
export type Mark = z.infer<typeof zMark>;

/** Two slots written in turn, each within one sector: a write that is cut short leaves the other. */
const SLOT_BYTES = 512;
/** At most so often is the disk asked to keep what was written; a process that is killed loses nothing of it. */
const SYNC_EVERY_MS = 1000;

const zSlot = z.strictObject({ turn: z.int().min(0), mark: zMark, mac: z.string() });

/** What stands in such a file: the newest slot that is genuine; `damaged` when there is a file and no slot holds. */
export function readMark(path: string, key: Uint8Array): Mark | 'absent' | 'damaged' {
  return newestSlot(path, key).mark;
}

function newestSlot(
  path: string,
  key: Uint8Array,
): { readonly turn: number; readonly mark: Mark | 'absent' | 'damaged' } {
  const size = statSync(path, { throwIfNoEntry: false })?.size;
  if (size === undefined || size === 0) return { turn: 0, mark: 'absent' };
  const bytes = Buffer.alloc(2 * SLOT_BYTES);
  const file = openSync(path, 'r');
  try {
    readSync(file, bytes, 0, bytes.length, 0);
  } finally {
    closeSync(file);
  }
  // Room that was taken and not written to yet.
  if (bytes.every((byte) => byte === 0 || byte === 0x20)) return { turn: 0, mark: 'absent' };
  const slots = [0, 1].flatMap((slot) => readSlot(bytes.subarray(slot * SLOT_BYTES, (slot + 1) * SLOT_BYTES), key));
  const newest = slots.sort((a, b) => b.turn - a.turn)[0];
  return newest ?? { turn: 0, mark: 'damaged' };
}

function readSlot(bytes: Buffer, key: Uint8Array): readonly { readonly turn: number; readonly mark: Mark }[] {
  try {
    const { turn, mark, mac } = zSlot.parse(JSON.parse(bytes.toString('utf8')));
    const ours = macOf(key, turn, mark);
    const theirs = Buffer.from(mac, 'hex');
    return theirs.length === ours.length && timingSafeEqual(ours, theirs) ? [{ turn, mark }] : [];
  } catch {
    return [];
  }
}

const macOf = (key: Uint8Array, turn: number, mark: Mark) => keyedDigest(key, ['last-acknowledged', turn, mark]);

/** Keeps a mark in a file of its own. It is written after the commit and before the answer: never ahead of the journal. */
export type MarkFile = { readonly put: (mark: Mark) => void; readonly close: () => void };

/**
 * Opens such a file to write. Its room is taken at once, so that a full disk later does not stop it.
 * @throws What the file system says.
 */
export function openMarkFile(path: string, key: Uint8Array): MarkFile {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  let { turn } = newestSlot(path, key);
  const file = openSync(path, statSync(path, { throwIfNoEntry: false }) ? 'r+' : 'w+', 0o600);
  if ((statSync(path, { throwIfNoEntry: false })?.size ?? 0) < 2 * SLOT_BYTES)
    writeSync(file, Buffer.alloc(2 * SLOT_BYTES, ' '), 0, 2 * SLOT_BYTES, 0);
  let syncedAt = 0;
  let syncing = false;
  let open = true;
  const sync = () => {
    if (syncing || performance.now() - syncedAt < SYNC_EVERY_MS) return;
    syncing = true;
    syncedAt = performance.now();
    fdatasync(file, () => {
      syncing = false;
      if (!open) closeSync(file);
    });
  };
  return {
    put: (mark) => {
      turn += 1;
      const slot = Buffer.alloc(SLOT_BYTES, ' ');
      slot.write(JSON.stringify({ turn, mark, mac: macOf(key, turn, mark).toString('hex') }), 'utf8');
      writeSync(file, slot, 0, SLOT_BYTES, (turn % 2) * SLOT_BYTES);
      sync();
    },
    close: () => {
      open = false;
      try {
        fdatasyncSync(file);
      } finally {
        if (!syncing) closeSync(file);
      }
    },
  };
}
