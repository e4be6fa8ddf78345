import { call, ORPCError } from '@orpc/server';
import { expect, it } from 'vitest';
import refusals from '../../assets/words/en/refusals.json' with { type: 'json' };
import type { Refusal } from '../../core/refusal.ts';
import { wordsFor } from '../../core/text/wordsFor.ts';
import type { OpenShop } from '../../db/index.ts';
import { openEngine } from './openEngine.ts';
import { openTools } from './openTools.ts';
import { openDoorman } from './people/doorman.ts';
import { newSession } from './people/session.ts';
import { createRouter, type RouterNeeds } from './router.ts';

/** A shop whose disk answers every reading with an error of the system. */
const onABadDisk = (code: string) =>
  ({
    path: '/srv/shop/shop.db',
    read: async () => {
      throw Object.assign(new Error('disk I/O error'), { code });
    },
  }) as unknown as OpenShop;

async function asked(code: string): Promise<unknown> {
  const shop = onABadDisk(code);
  const doorman = openDoorman({ shop, tools: openTools(openEngine(), () => null), steady: () => 0 });
  const router = createRouter({ shop, doorman, clock: () => 0 } as unknown as RouterNeeds);
  return call(router.dayLine, undefined, { context: { door: 'window', session: newSession('window') } }).then(
    () => null,
    (error: unknown) => (error instanceof ORPCError ? [error.code, error.data] : 'a defect'),
  );
}

it.each([
  ['SQLITE_IOERR_READ', 'disk-failing'],
  ['EIO', 'disk-failing'],
  ['SQLITE_CORRUPT', 'damaged-file'],
  ['ENOSPC', 'disk-full'],
])('a disk that says %s while something is read is told in words', async (code, refused) => {
  const said = (await asked(code)) as readonly [string, Refusal];
  expect(said).toMatchObject(['CONFLICT', { refused, path: '/srv/shop/shop.db' }]);
  expect(wordsFor(said[1], refusals).says).toMatch(/\/srv\/shop\/shop\.db/);
});

it('a defect stays one', async () => {
  expect(await asked('E_OWNER')).toBe('a defect');
});
