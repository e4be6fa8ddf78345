import { expect, test } from 'vitest';
import { plainPage } from './plainPage.ts';

test('nothing in a path can become markup', () => {
  const { body } = plainPage('en', 'a<b', [{ exactly: '/srv/<img src=x onerror=alert(1)>"\'&' }, { ways: ['<b>'] }]);
  expect(body).not.toMatch(/<img|<b>/);
  expect(body).toContain('/srv/&#60;img src=x onerror=alert(1)&#62;&#34;&#39;&#38;');
});

test('a plain page may run nothing and load nothing', () => {
  const { headers } = plainPage('en', 'a', []);
  expect(headers['Content-Security-Policy']).toMatch(/^default-src 'none'; style-src 'sha256-[^']+'; base-uri/);
});
