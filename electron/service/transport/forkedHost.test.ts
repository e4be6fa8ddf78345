import { EventEmitter } from 'node:events';
import { expect, test, vi } from 'vitest';
import { smallRouter } from '../../../tests/builders/smallRouter.ts';
import { type ForkedProcess, forkedHost } from './forkedHost.ts';
import type { FromService, ToService } from './processMessages.ts';

/** A forked process seen from its parent: what it was told, and what it answered. */
function forked() {
  const events = new EventEmitter();
  const said: FromService[] = [];
  const self = Object.assign(events, {
    send: (message: FromService, told?: () => void) => {
      said.push(message);
      told?.();
      return true;
    },
  }) as unknown as ForkedProcess;
  const host = forkedHost(self);
  const shop = smallRouter();
  const tell = (message: ToService) => events.emit('message', message);
  const call = (port: number, id: string, name: string, json?: unknown) =>
    tell({ say: 'data', port, data: JSON.stringify({ i: id, p: { u: `/${name}`, b: { json } } }) });
  const answersAt = (port: number) =>
    said.flatMap((message) => (message.say === 'data' && message.port === port ? [String(message.data)] : []));
  void host.serve({ router: shop.router, sealHeads: () => undefined, close: () => undefined });
  return { host, events, said, shop, tell, call, answersAt };
}

test('it says that it is ready, and each port gets its own answers', async () => {
  const { said, call, answersAt } = forked();
  expect(said).toEqual([{ say: 'ready' }]);
  call(1, 'a', 'door');
  call(2, 'b', 'list');
  await expect.poll(() => answersAt(1)).toEqual([expect.stringContaining('"window"')]);
  await expect.poll(() => answersAt(2)).toEqual([expect.stringMatching(/"i":"b".*\[\]/)]);
});

test('bad text is refused at this door too, and nothing is written', async () => {
  const { call, answersAt, shop } = forked();
  call(1, 'a', 'add', { text: '\ud83d' });
  await expect.poll(() => answersAt(1)).toEqual([expect.stringContaining('BAD_REQUEST')]);
  expect(shop.texts).toEqual([]);
});

test('a window that is closed is no longer told of changes', async () => {
  const { call, tell, shop } = forked();
  call(1, 'a', 'changes', { since: null });
  await expect.poll(() => shop.listening.size).toBe(1);
  tell({ say: 'closed', port: 1 });
  await expect.poll(() => shop.listening.size).toBe(0);
});

test('it ends when asked to, and when its parent is gone', () => {
  const { host, events, tell } = forked();
  const end = vi.fn();
  host.onEnd(end);
  tell({ say: 'end' });
  events.emit('disconnect');
  expect(end).toHaveBeenCalledTimes(2);
});

test('a refusal is on its way before the process may end', async () => {
  const { host, said } = forked();
  await host.refuse({ refused: 'disk-full', path: '/srv/shop' });
  expect(said.at(-1)).toEqual({ say: 'refused', refusal: { refused: 'disk-full', path: '/srv/shop' } });
});
