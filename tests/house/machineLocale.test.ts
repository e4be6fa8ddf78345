import { describe, expect, it } from 'vitest';
import { machineLocales } from './machineLocale.ts';
import { filesBelow, HOUSE } from './source.ts';

const at = (text: string) => machineLocales({ path: 'electron/service/x.ts', text });

describe('a text is written and ordered in a language that is named', () => {
  it('holds in the whole house', () => {
    expect(HOUSE.flatMap((area) => filesBelow(area)).flatMap(machineLocales)).toEqual([]);
  });

  it.each([
    'name.toLocaleLowerCase()',
    'name?.toLocaleUpperCase(undefined)',
    'a.localeCompare(b)',
    'a.localeCompare(b, undefined, { numeric: true })',
  ])('finds the machine’s own: %s', (text) => {
    expect(at(text)).toHaveLength(1);
  });

  it.each(['name.toLocaleLowerCase(locale)', "a.localeCompare(b, 'en', { numeric: true })", 'name.toLowerCase()'])(
    'lets %s be',
    (text) => {
      expect(at(text)).toEqual([]);
    },
  );
});
