import type { MessagePortMain } from 'electron';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { StartRefusal } from '../service/backing.ts';
import { keepService } from './keeper.ts';
import type { ServiceProcess } from './serviceProcess.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Services that do what the test says, and a note of what was done with them. */
function house() {
  const did: string[] = [];
  const told: string[] = [];
  const started: { opens: (refusal?: StartRefusal) => void; dies: () => void }[] = [];
  const start = (): ServiceProcess => {
    const number = started.length;
    const opened = Promise.withResolvers<StartRefusal | undefined>();
    const gone = Promise.withResolvers<void>();
    started.push({
      opens: opened.resolve,
      dies: () => {
        opened.resolve({ refused: 'service-ended', path: '' });
        gone.resolve();
      },
    });
    return {
      opened: opened.promise,
      gone: gone.promise,
      connect: () => void did.push(`port to ${number}`),
      askToEnd: () => void did.push(`end ${number}`),
      kill: () => {
        did.push(`kill ${number}`);
        gone.resolve();
      },
    };
  };
  const keeper = keepService(start, ({ refused }) => void told.push(refused), Date.now);
  const settle = () => vi.advanceTimersByTimeAsync(0);
  return { did, told, started, keeper, settle };
}

const port = (closed: () => void = () => undefined) => ({ close: closed }) as unknown as MessagePortMain;

test('a window that asks early is connected once the shop is open', async () => {
  const { did, started, keeper, settle } = house();
  keeper.connect(port());
  await settle();
  expect(did).toEqual([]);
  started[0]?.opens();
  await settle();
  expect(did).toEqual(['port to 0']);
});

test('a service that ends by itself is started anew, and windows are connected to the new one', async () => {
  const { did, started, keeper, told, settle } = house();
  started[0]?.opens();
  await vi.advanceTimersByTimeAsync(60_000);
  started[0]?.dies();
  await settle();
  started[1]?.opens();
  keeper.connect(port());
  await settle();
  expect(did).toEqual(['port to 1']);
  expect(told).toEqual([]);
});

test('one that ends soon after its start twice in a row is told of, and not started for ever', async () => {
  const { started, told, settle } = house();
  for (const number of [0, 1]) {
    started[number]?.opens();
    await settle();
    started[number]?.dies();
    await settle();
  }
  expect(started).toHaveLength(2);
  expect(told).toEqual(['service-ended']);
});

test('a shop that cannot be opened is told of at once, and a window’s port is closed', async () => {
  const { started, keeper, told, settle } = house();
  const closed = vi.fn();
  keeper.connect(port(closed));
  started[0]?.opens({ refused: 'disk-full', path: '/srv/shop' });
  started[0]?.dies();
  await settle();
  expect(told).toEqual(['disk-full']);
  expect(closed).toHaveBeenCalledOnce();
  expect(started).toHaveLength(1);
});

test('at the end the service is asked, waited for, and ended if it does not end', async () => {
  const { did, started, keeper, told, settle } = house();
  started[0]?.opens();
  await settle();
  const ended = keeper.end();
  await settle();
  expect(did).toEqual(['end 0']);
  await vi.advanceTimersByTimeAsync(5_000);
  await ended;
  expect(did).toEqual(['end 0', 'kill 0']);
  expect(started).toHaveLength(1);
  expect(told).toEqual([]);
});
