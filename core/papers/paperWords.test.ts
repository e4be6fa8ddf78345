import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { PAPER_KINDS } from './kinds.ts';

const ROOT = new URL('../../assets/words/', import.meta.url);
const languages = readdirSync(ROOT).filter((name) => /^[a-z]{2}$/.test(name));
const read = (language: string, file: string): unknown =>
  JSON.parse(readFileSync(new URL(`${language}/${file}.json`, ROOT), 'utf8'));

test('told and seen words exist in four languages', () => {
  for (const language of ['en', 'de', 'es', 'fr']) expect(languages).toContain(language);
  expect(Object.keys(read('en', 'symptoms') as object).length).toBe(68);
});

test('every kind of paper has a name of its own', () => {
  const { kinds } = read('en', 'papers') as { kinds: Record<string, { named: string; title: string }> };
  expect(Object.keys(kinds).sort()).toEqual(Object.keys(PAPER_KINDS).sort());
  const names = Object.values(kinds).map(({ named }) => named);
  expect(new Set(names).size).toBe(names.length);
});
