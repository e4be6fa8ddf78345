import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { pageFile } from './pageFile.ts';

let root: string;
let page: string;

beforeAll(() => {
  root = realpathSync(mkdtempSync(join(tmpdir(), 'knowngood-page-')));
  page = join(root, 'ui');
  mkdirSync(join(page, 'assets'), { recursive: true });
  writeFileSync(join(page, 'index.html'), '<!doctype html>');
  writeFileSync(join(page, 'assets', 'a b.js'), '1');
  writeFileSync(join(page, 'assets', 'notes.db'), 'no part of a page');
  writeFileSync(join(root, 'secret.json'), '{}');
  mkdirSync(join(root, 'ui-next'));
  writeFileSync(join(root, 'ui-next', 'secret.json'), '{}');
  symlinkSync(join(root, 'secret.json'), join(page, 'way-out.json'));
});
afterAll(() => rmSync(root, { recursive: true }));

test('the page and its files are found with their types', () => {
  expect(pageFile(page, '/')).toEqual({ path: join(page, 'index.html'), type: 'text/html; charset=utf-8' });
  expect(pageFile(page, '/assets/a%20b.js')?.type).toBe('text/javascript; charset=utf-8');
});

test.each([
  '/../secret.json',
  '/assets/../../secret.json',
  '/%2e%2e/secret.json',
  '/..%2fsecret.json',
  '/%2e%2e%2fsecret.json',
  '/..\\secret.json',
  '/..%5csecret.json',
  '/../ui-next/secret.json',
  '//../secret.json',
  '/way-out.json',
])('a way out of the page’s folder is refused: %s', (pathname) => {
  expect(pageFile(page, pathname)).toBeUndefined();
});

test.each(['/assets', '/assets/', '/assets/notes.db', '/not-there.js', '/%E0%A4%A', '/index.html%00.js'])(
  'what is no file of the page is not given: %s',
  (pathname) => {
    expect(pageFile(page, pathname)).toBeUndefined();
  },
);
