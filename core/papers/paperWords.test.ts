import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { PAPER_KINDS } from './kinds.ts';

const ROOT = new URL('../../assets/words/', import.meta.url);
const languages = readdirSync(ROOT).filter((name) => /^[a-z]{2}$/.test(name));
const read = (language: string, file: string): unknown =>
  JSON.parse(readFileSync(new URL(`${language}/${file}.json`, ROOT), 'utf8'));

/** Texts by their path; plural forms count as one text. */
function texts(value: unknown, path = ''): Map<string, string> {
  if (typeof value === 'string') return new Map([[path, value]]);
  const entries = Object.entries(value as Record<string, unknown>);
  if (entries.some(([name]) => name === 'other')) return new Map([[path, entries.map(([, form]) => form).join(' ')]]);
  return new Map(entries.flatMap(([name, inner]) => [...texts(inner, `${path}/${name}`)]));
}
const places = (text: string) => [...new Set(text.match(/\{[\w-]+\}/g) ?? [])].sort();

describe.each(['symptoms', 'history', 'consents', 'papers'])('%s', (file) => {
  const english = texts(read('en', file));
  const translated = languages.filter(
    (language) => language !== 'en' && existsSync(new URL(`${language}/${file}.json`, ROOT)),
  );

  test.each(translated)('says in %s all that it says in English, with the same places to fill', (language) => {
    const own = texts(read(language, file));
    expect([...own.keys()].sort()).toEqual([...english.keys()].sort());
    for (const [path, text] of english) expect(places(own.get(path) ?? ''), path).toEqual(places(text));
  });

  test('has no empty text', () => {
    for (const language of ['en', ...translated])
      for (const [path, text] of texts(read(language, file))) expect(text.trim(), path).not.toBe('');
  });
});

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
