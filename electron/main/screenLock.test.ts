import { EventEmitter } from 'node:events';
import { expect, test } from 'vitest';
import { tellOfLock } from './screenLock.ts';

test('every window hears when the screen is locked, and when the computer goes to sleep', () => {
  const monitor = new EventEmitter();
  const heard: unknown[] = [];
  const window = (name: string) => ({
    webContents: { send: (channel: string, at: number) => heard.push([name, channel, at]) },
  });
  let now = 7;
  tellOfLock(
    monitor as never,
    () => [window('one'), window('two')],
    () => now,
  );
  monitor.emit('lock-screen');
  now = 9;
  monitor.emit('suspend');
  monitor.emit('unlock-screen');
  expect(heard).toEqual([
    ['one', 'knowngood:locked', 7],
    ['two', 'knowngood:locked', 7],
    ['one', 'knowngood:locked', 9],
    ['two', 'knowngood:locked', 9],
  ]);
});
