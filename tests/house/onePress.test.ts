import { describe, expect, it } from 'vitest';
import { pressesOfMany } from './onePress.ts';
import { filesBelow } from './source.ts';

const at = (text: string) => pressesOfMany({ path: 'renderer/x.ts', text });

describe('a press is one command', () => {
  it('holds in all screens', () => {
    expect(filesBelow('renderer').flatMap(pressesOfMany)).toEqual([]);
  });

  it.each([
    ['one after the other', "const go = async () => { await execute('a', {}); await execute('b', {}); };"],
    ['one if the other was done', "const go = async () => (await execute('a', {})) && execute('b', {});"],
    ['in a loop', "const go = async () => { for (const one of all) await execute('a', one); };"],
    ['for each', "const go = () => all.map((one) => doing.execute('a', one));"],
    ['after the other', "const go = () => execute('a', {}).then(() => execute('b', {}));"],
    ['by its own name', "const put = () => execute('a', {}); const go = () => { put(); put(); };"],
    ['on one of two ways', "const go = () => { if (a) return put(execute('a', {}), execute('b', {})); };"],
  ])('two of them %s are found', (_how, text) => {
    expect(at(text)).not.toEqual([]);
  });

  it.each([
    ['one or the other', "const go = () => (a ? execute('a', {}) : execute('b', {}));"],
    ['the other where it left', "const go = () => { if (a) return execute('a', {}); return execute('b', {}); };"],
    ['one key each', "const keys = { a: () => execute('a', {}), b: () => execute('b', {}) };"],
    ['one of many keys', "const go = () => all.map((one) => ({ press: () => execute('a', one) }));"],
  ])('one at a time is none too many: %s', (_how, text) => {
    expect(at(text)).toEqual([]);
  });
});
