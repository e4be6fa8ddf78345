import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { CONTENT_POLICY, REACT_ARIA_STYLE } from './contentPolicy.ts';

const fromHere = createRequire(import.meta.url);

test('the one inline style the policy lets in is the one the installed react-aria writes', () => {
  const library = dirname(fromHere.resolve('react-aria/package.json'));
  const source = readFileSync(join(library, 'dist/private/interactions/usePress.mjs'), 'utf8');
  const attribute = /PRESSABLE_ATTRIBUTE = '([^']+)'/.exec(source)?.[1] ?? '';
  const style = /style\.textContent = `([^`]*)`\.trim\(\)/.exec(source)?.[1] ?? '';
  expect(attribute).not.toBe('');
  const written = style.replace(/\$\{[^}]*PRESSABLE_ATTRIBUTE\}/, attribute).trim();
  expect(written).toContain('touch-action');
  expect(REACT_ARIA_STYLE).toBe(`'sha256-${createHash('sha256').update(written).digest('base64')}'`);
});

test('no script may come from anywhere but our own files', () => {
  const scripts = CONTENT_POLICY.split('; ').find((rule) => rule.startsWith('script-src '));
  expect(scripts).toBe("script-src 'self'");
  expect(CONTENT_POLICY).not.toContain('unsafe-eval');
  const unsafe = CONTENT_POLICY.split('; ').filter((rule) => rule.includes("'unsafe-inline'"));
  expect(unsafe).toEqual(["style-src-attr 'unsafe-inline'"]);
});

test.each(['object-src', 'base-uri', 'frame-ancestors', 'form-action'])('%s is closed', (rule) => {
  expect(CONTENT_POLICY.split('; ')).toContain(`${rule} 'none'`);
});
