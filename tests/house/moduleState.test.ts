import { describe, expect, it } from 'vitest';
import { moduleState } from './moduleState.ts';
import { filesBelow, isCode } from './source.ts';

const inCore = (text: string) => moduleState({ path: 'core/tracing/a.ts', text });

describe('core keeps nothing between calls but in what somebody opened', () => {
  it('holds in the whole of core', () => {
    expect(
      filesBelow('core')
        .filter(isCode)
        .flatMap((source) => moduleState(source)),
    ).toEqual([]);
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

  it.each([
    'const cacheOf = () => { const kept = new Map(); return (id: string) => kept.set(id, 1); }; const known = cacheOf();',
    'function counter() { let count = 0; return { next: () => ++count }; } export const next = counter();',
    'function counter() { let count = 0; return { next }; function next() { count += 1; return count; } } const c = counter();',
    'const once = (f: F) => { let made: M | undefined; const get = () => (made ??= f()); return get; }; const model = once(open);',
    'const known = (() => { const kept: string[] = []; return (id: string) => kept.push(id); })();',
    'const cacheOf = () => { const kept = new Map(); return () => kept.clear(); }; const all = { known: cacheOf() };',
    'const cacheOf = (kept = new Map()) => (id: string) => kept.set(id, 1); const known = cacheOf();',
    'const inner = () => { const kept = new Set(); return () => kept.add(1); }; const outer = () => inner(); const known = outer();',
  ])('finds what is kept behind a closure: %s', (text) => {
    expect(inCore(text)).toEqual([expect.stringContaining('is kept behind functions that change it')]);
  });

  it('finds it also where the function that keeps it is another file’s', () => {
    const cache = 'export const cacheOf = () => { const kept = new Map(); return (id: string) => kept.set(id, 1); };';
    const text = "import { cacheOf as cached } from './cache.ts'; const known = cached();";
    const from = (path: string) => (path === 'core/tracing/cache.ts' ? { path, text: cache } : undefined);
    expect(moduleState({ path: 'core/tracing/a.ts', text }, from)).toHaveLength(1);
    expect(moduleState({ path: 'core/tracing/a.ts', text }, () => undefined)).toEqual([]);
  });

  it.each([
    'const tableOf = (list: L) => { const table: T = {}; for (const one of list) table[one] = 1; return table; }; const T = tableOf(all);',
    'const sumOf = (list: L) => { let sum = 0; list.forEach((one) => { sum += one; }); return sum; }; const SUM = sumOf(all);',
    'const firsts = (list: L) => { const met = new Set(); return list.filter((one) => !met.has(one) && met.add(one)); }; const F = firsts(all);',
    'const lookUp = (list: L) => { const byId = new Map(list); return (id: string) => byId.get(id); }; const find = lookUp(all);',
    'const cacheOf = () => { const kept = new Map(); return () => kept.clear(); }; export const open = () => cacheOf();',
    'const counted = (list: L) => () => { let n = 0; for (const _ of list) n += 1; return n; }; const count = counted(all);',
  ])('lets a function that keeps nothing be, and what somebody opens: %s', (text) => {
    expect(inCore(text)).toEqual([]);
  });

  it('leaves tests and the other folders alone', () => {
    const text = 'let loaded = null;';
    expect(moduleState({ path: 'core/tracing/a.test.ts', text })).toEqual([]);
    expect(moduleState({ path: 'electron/service/a.ts', text })).toEqual([]);
  });
});
