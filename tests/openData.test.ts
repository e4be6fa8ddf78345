import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findOpenData } from './openData.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'knowngood-data-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

function layOut() {
  for (const kind of ['hardware', 'open-repair']) mkdirSync(join(folder, kind));
  for (const name of ['dmi-002.txt', 'dmi-001.txt', 'smart-001.txt']) writeFileSync(join(folder, 'hardware', name), '');
}

describe('finding the open data', () => {
  it('takes the folder the variable names, and lists its files by name', () => {
    layOut();
    const files = findOpenData(folder)?.files('hardware', /^dmi-/);
    expect(files).toEqual([join(folder, 'hardware', 'dmi-001.txt'), join(folder, 'hardware', 'dmi-002.txt')]);
  });

  it('is silent, and looks nowhere by itself, when the variable is not set', () => {
    expect(findOpenData(null)).toBeUndefined();
  });

  it.each(['nowhere', ''])('fails when the variable is set to "%s", where nothing is', (said) => {
    expect(() => findOpenData(said)).toThrow('KNOWNGOOD_OPEN_DATA');
  });

  it('fails when the variable names a folder with half of the data, and says which half is missing', () => {
    mkdirSync(join(folder, 'hardware'));
    expect(() => findOpenData(folder)).toThrow('no open-repair folder');
  });
});
