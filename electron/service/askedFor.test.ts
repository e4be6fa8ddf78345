import { join } from 'node:path';
import { expect, test } from 'vitest';
import { askedFor } from './askedFor.ts';
import { appFolder } from './dataFolder.ts';

test('a folder and a port are taken as given', () => {
  expect(askedFor(['--data', '/srv/shop', '--http', '0'])).toEqual({ data: '/srv/shop', http: 0 });
  expect(askedFor(['--data=/srv/shop'])).toEqual({ data: '/srv/shop' });
});

test.each([
  [['--http', '-1']],
  [['--http', '65536']],
  [['--http', '80x']],
  [['--http=']],
  [['--data=']],
  [['--data']],
  [['--date', '/srv/shop']],
  [['/srv/shop']],
])('a wrong argument is named: %j', (args) => {
  expect(askedFor(args)).toHaveProperty('wrong', expect.stringMatching(/http|data|date|srv/));
});

test('each system keeps the shop where its own custom has it', () => {
  expect(appFolder({ XDG_CONFIG_HOME: '/conf' }, 'linux', '/home/mara')).toBe('/conf/knowngood');
  expect(appFolder({}, 'linux', '/home/mara')).toBe('/home/mara/.config/knowngood');
  expect(appFolder({}, 'darwin', '/Users/mara')).toBe('/Users/mara/Library/Application Support/knowngood');
  expect(appFolder({ APPDATA: '/roaming' }, 'win32', '/mara')).toBe(join('/roaming', 'knowngood'));
});
