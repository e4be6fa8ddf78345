import { expect, test } from 'vitest';
import { ownArguments } from './ownArguments.ts';

test('Chromium’s switches and the app’s folder are not ours; the data folder is', () => {
  const argv = ['/opt/electron', '/srv/app', '--no-sandbox', '--inspect=0', '--data', '/srv/shop', '--lang=en'];
  expect(ownArguments(argv, '/srv/app')).toEqual(['--data', '/srv/shop']);
  expect(ownArguments(['/opt/electron', '--data=/srv/shop', '/srv/app/'], '/srv/app')).toEqual(['--data=/srv/shop']);
});

test('a word we do not know is kept, so that it can be named as wrong', () => {
  expect(ownArguments(['/opt/electron', '/srv/app', 'shop'], '/srv/app')).toEqual(['shop']);
  expect(ownArguments(['/opt/electron', '/srv/app', '--data'], '/srv/app')).toEqual(['--data']);
});
