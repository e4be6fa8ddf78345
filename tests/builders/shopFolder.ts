import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { knownKind } from '../../core/entries/entryTable.ts';
import type { CommandId, StaffId } from '../../core/ids.ts';
import type { Draft, Json, Stream } from '../../core/journal/entry.ts';
import { type EpochMs, epochMs } from '../../core/time.ts';
import {
  type Executed,
  fileWallet,
  isOpenRefusal,
  type NotExecuted,
  type OpenRefusal,
  type OpenShop,
  openShop,
} from '../../db/index.ts';
import type { Log } from '../../db/log/log.ts';
import type { EntriesOrRefusal } from '../../db/shop/shop.ts';

/** A shop's folder of its own, with a clock that a test turns by hand and a log it can read. */
export type ShopFolder = {
  readonly folder: string;
  readonly walletPath: string;
  readonly logged: { readonly event: string; readonly facts: unknown }[];
  readonly clock: { now: EpochMs };
  readonly open: () => Promise<OpenShop | OpenRefusal>;
  /** Opens it where nothing should be in the way. */
  readonly opened: () => Promise<OpenShop>;
  readonly remove: () => void;
};

const NINE_IN_THE_MORNING = epochMs(Date.UTC(2026, 2, 2, 9));

export function aShopFolder(folder = mkdtempSync(join(tmpdir(), 'knowngood-shop-'))): ShopFolder {
  const walletPath = join(folder, 'wallet.key');
  const clock = { now: NINE_IN_THE_MORNING };
  const logged: { event: string; facts: unknown }[] = [];
  const log: Log = (event, facts) => void logged.push({ event, facts });
  const open = () => openShop({ folder, branch: 'main', clock: () => clock.now, wallet: fileWallet(walletPath), log });
  return {
    folder,
    walletPath,
    logged,
    clock,
    open,
    opened: async () => {
      const shop = await open();
      if (isOpenRefusal(shop)) throw new Error(`Not opened: ${JSON.stringify(shop)}`);
      return shop;
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

let commands = 0;

/** A command as a bench would ask it. */
export const asked = (
  over: { readonly command?: string; readonly asked?: Json; readonly by?: string; readonly device?: string } = {},
) => ({
  command: (over.command ?? `command-${++commands}`) as CommandId,
  by: (over.by ?? 'staff-1') as StaffId,
  device: over.device ?? 'bench-1',
  asked: over.asked ?? null,
});

/** What a test's own rule comes to: these entries. */
export const accept = (...entries: readonly Draft[]): EntriesOrRefusal => ({ ok: true, entries });

export const draft = (stream: Stream, kind: string, body: unknown = {}): Draft => ({
  stream,
  kind,
  v: knownKind(stream, kind)?.v ?? 1,
  body,
});

/** Writes entries as one command, without looking at anything. */
export const write = (shop: OpenShop, ...entries: readonly Draft[]): Promise<Executed | NotExecuted> =>
  shop.runCommand(asked(), () => accept(...entries));

/** Entries that may stand anywhere in a shop's own stream: a model of its own in use, and a shop that learns anew. */
export const edition = (name = 'dark'): Draft => draft('shop', 'model-used', { name, changes: [] });
export const learntNothing: Draft = draft('shop', 'priors-reset', { counted: 0 });
