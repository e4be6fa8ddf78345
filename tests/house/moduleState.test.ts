import { describe, expect, it } from 'vitest';
import { moduleState } from './moduleState.ts';
import { filesBelow, isCode } from './source.ts';

const inCore = (text: string) => moduleState({ path: 'core/tracing/a.ts', text });

describe('core keeps nothing between calls but in what somebody opened', () => {
  it('holds in the whole of core', () => {
    expect(filesBelow('core').filter(isCode).flatMap(moduleState)).toEqual([]);
  });

  it.each([
    'let loaded: Model | null = null;',
    'export let count = 0;',
    'var seen;',
    'const known = new WeakMap<Model, Prior>();',
    'const known: Map<string, Prior> = new Map();',
    'const met = new Set<string>();',
    'const shown = new Float64Array(8);',
    'export const masks = new Uint8Array(COUNT);',
    'const ROW = new Float64Array(8); export const write = () => ROW.fill(1);',
    'const kept: Log[] = []; export const keep = (log: Log) => kept.push(log);',
    'const shown = { count: 0 }; export const show = () => { shown.count += 1; };',
    'const row = [0]; export const write = () => { row[0] = 1; };',
    'const byId = new Map(list); export const learn = (id: string) => byId.set(id, 1);',
    'const facts = { a: 1 }; export const forget = () => { delete facts.a; };',
    'const facts = { a: 1 }; export const more = () => facts.a++;',
  ])('finds %s', (text) => {
    expect(inCore(text)).toHaveLength(1);
  });

  it.each([
    'const DIGITS = new Map(list.map((one) => [one.id, one]));',
    'const OUTSIDE = new Set(["a"]);',
    'const NOTHING = new Uint8Array();',
    'export const START: Uint8Array = new Uint8Array(32);',
    'const WHOLE = new Float64Array([1, 2]);',
    'const KEPT = { begin: () => new Map() };',
    'export const f = () => { const row = new Float64Array(8); row[0] = 1; return row; };',
    'export function g() { let count = 0; count += 1; return count; }',
    'export class Memory { readonly #kept = new Map(); set() { this.#kept.set(1, 2); } }',
    'const LIST = [2, 1]; export const sorted = () => LIST.toSorted();',
  ])('lets %s be', (text) => {
    expect(inCore(text)).toEqual([]);
  });

  it('leaves tests and the other folders alone', () => {
    const text = 'let loaded = null;';
    expect(moduleState({ path: 'core/tracing/a.test.ts', text })).toEqual([]);
    expect(moduleState({ path: 'electron/service/a.ts', text })).toEqual([]);
  });
});
