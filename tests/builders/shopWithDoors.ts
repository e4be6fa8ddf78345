import { join } from 'node:path';
import { createRouterClient } from '@orpc/server';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import refusals from '../../assets/words/en/refusals.json' with { type: 'json' };
import type { BackupSettings } from '../../core/contract/backupSheet.ts';
import type { WordsOnce } from '../../core/contract/hereSheet.ts';
import { refusalNamed, wordsFor } from '../../core/text/wordsFor.ts';
import type { OpenShop } from '../../db/index.ts';
import { doBackupTask } from '../../electron/service/backups/backupTask.ts';
import { openBackups } from '../../electron/service/backups/openBackups.ts';
import { openFollowing } from '../../electron/service/desk/estimating/following.ts';
import { openEngine } from '../../electron/service/openEngine.ts';
import { openTools } from '../../electron/service/openTools.ts';
import { openDoorman } from '../../electron/service/people/doorman.ts';
import { newSession, type ScreenSession } from '../../electron/service/people/session.ts';
import { createRouter } from '../../electron/service/router.ts';
import { aShopFolder, type ShopFolder } from './shopFolder.ts';

/** As little as argon2id can cost: what is tried here is who gets in, not for how much. */
const CHEAP = { m: 16, t: 1, p: 1 };

/** A part without a tag, as it is added to the wall. */
export const wallPart = {
  tag: null,
  kind: 'dimm',
  name: 'Oakrill 8G',
  attributes: {},
  place: { at: 'bin', bin: 'A1' },
  valueMinor: 1000,
  standing: { is: 'trial-grade', scopes: ['starts'] },
};

/** A refusal as it comes to a screen. */
export type Refused = { readonly refused: string; readonly [fact: string]: unknown };

/** A shop of three, set up, with its doors open, and a steady clock that a test turns. */
export type ShopWithDoors = Awaited<ReturnType<typeof aShopWithDoors>>;

/** Mina is at the desk, Nessa at the bench, Bram at the bench too, and keeps the shop. */
export async function aShopWithDoors() {
  const folder = aShopFolder();
  let shop = await folder.opened();
  let doors = openDoors(folder, shop);
  await doors.at(newSession('window')).does('mina', 'openShop', { settings: shopOf.settings, staff: shopOf.staff });
  const screen = (station = 'window') => doors.at(newSession(station));
  return {
    folder,
    screen,
    at: (session: ScreenSession) => doors.at(session),
    passes: (ms: number) => doors.passes(ms),
    mayAsk: (session: ScreenSession) => doors.doorman.mayAsk(session),
    read: () => shop.read(),
    /** How its people get in, hashes and all: as the journal has it, and no screen. */
    people: async () => (await shop.read()).load('people'),
    /** Bram sets the shop's first PIN, and Mina's: his screen, and the recovery words he was shown. */
    withPins: async () => {
      const keeper = screen();
      await keeper.enter('bram', null);
      const first = (await keeper.setPin('bram', '4711', null)) as WordsOnce;
      await keeper.setPin('mina', '2468', '4711');
      return { keeper, words: first.words.join(' ') };
    },
    /** The service ends, and another one opens the same shop. */
    startAnew: async () => {
      await doors.end();
      await shop.close();
      shop = await folder.opened();
      doors = openDoors(folder, shop);
    },
    close: async () => {
      await doors.end();
      await shop.close();
      folder.remove();
    },
  };
}

/** The procedures over a shop, by hand: each screen with its own session. */
function openDoors(folder: ShopFolder, shop: OpenShop) {
  const steady = { now: 0 };
  const engine = openEngine();
  const tools = openTools(engine, () => null);
  const following = openFollowing({ shop, tools, engine });
  const doorman = openDoorman({ shop, tools, steady: () => steady.now, cost: CHEAP });
  const router = createRouter({
    shop,
    engine,
    tools,
    following,
    drafts: { save: async () => null, load: async () => null },
    doorman,
    standing: () => ({ onlyRead: null, notices: [] }),
    afterErasure: async () => undefined,
    backups: openBackups({
      folder: folder.folder,
      wallet: folder.walletPath,
      app: join(folder.folder, 'app'),
      shopId: 'shop',
      head: async () => (await shop.read()).head,
      zone: async () => 'UTC',
      clock: () => folder.clock.now,
      does: doBackupTask,
      tellDefect: (_what, error) => {
        throw error;
      },
    }),
    clock: () => folder.clock.now,
  });
  const said = (asked: Promise<unknown>): Promise<unknown> =>
    asked.catch((error: { readonly data?: Refused }) => {
      if (!error.data?.refused) throw new Error(JSON.stringify(error.data) ?? String(error));
      const { says } = wordsFor({ ...error.data, refused: refusalNamed(error.data.refused, refusals) }, refusals);
      if (says.includes('?')) throw new Error(`Words that lack a fact: ${says}`);
      return error.data;
    });
  let commands = 0;
  return {
    doorman,
    end: async () => {
      await following.end();
      await engine.end();
    },
    passes: (ms: number) => {
      steady.now += ms;
    },
    at: (session: ScreenSession) => {
      const asks = createRouterClient(router, { context: { door: 'window' as const, session } });
      return {
        session,
        here: () => asks.here(),
        enter: (who: string, pin: string | null) => said(asks.enter({ who, pin })),
        lock: () => asks.lock(),
        stir: () => asks.stir(),
        setPin: (who: string, pin: string, own: string | null) => said(asks.setPin({ who, pin, own })),
        words: (own: string) => said(asks.makeRecoveryWords({ own })),
        recover: (who: string, words: string, pin: string) => said(asks.recover({ who, words, pin })),
        does: (by: string, name: string, input: unknown, command = `door-${++commands}`) =>
          said(asks.execute({ command, by, name, input } as never)),
        previews: (by: string, name: string, input: unknown) => said(asks.preview({ by, name, input } as never)),
        dayLine: () => said(asks.dayLine()),
        backUpNow: () => said(asks.backUpNow()),
        setBackups: (settings: BackupSettings) => said(asks.setBackups(settings)),
      };
    },
  };
}
