import { describe, expect, it } from 'vitest';
import { impurities } from './pureCore.ts';
import { filesBelow, isCode } from './source.ts';

const inCore = (text: string) => impurities({ path: 'core/job/a.ts', text });

describe('core asks its caller, never the machine', () => {
  it('holds in the whole of core', () => {
    expect(filesBelow('core').filter(isCode).flatMap(impurities)).toEqual([]);
  });

  it.each([
    'Date.now()',
    'new Date()',
    'Date()',
    'Math.random()',
    'crypto.randomUUID()',
    'process.env.HOME',
    "fetch('http://127.0.0.1')",
    'console.log(1)',
    'globalThis.crypto',
    'performance.now()',
    'new Date(0).getHours()',
    'setTimeout(f, 1)',
    'a = { crypto }',
    'a[process]',
    'Temporal.Instant.from(text)',
  ])('finds %s', (text) => {
    expect(inCore(`export const f = () => { ${text}; };`)).toHaveLength(1);
  });

  it.each([
    'Temporal.Now.instant()',
    'Temporal.Now.zonedDateTimeISO()',
    'Temporal.Now',
    'Intl.DateTimeFormat().resolvedOptions()',
    "new Intl.DateTimeFormat('en')",
    "new Intl.DateTimeFormat('en', { weekday: 'long' })",
    "new Intl.DateTimeFormat('en', { timeZone: undefined })",
    'new Date(0).toLocaleDateString()',
    'at.toLocaleString()',
    'at.toLocaleLowerCase()',
    'at.toLocaleUpperCase(undefined)',
    "at.localeCompare('b')",
  ])('finds the clock, the zone or the language of the machine in %s', (text) => {
    expect(inCore(`import { Temporal } from 'temporal-polyfill'; export const f = (at: any) => ${text};`)).not.toEqual(
      [],
    );
  });

  it.each([
    'Temporal.Instant.fromEpochMilliseconds(at)',
    'Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone)',
    "Temporal.PlainDate.from(day).toZonedDateTime({ timeZone: zone, plainTime: '09:00' })",
    "new Intl.DateTimeFormat('en', { weekday: 'long', timeZone: zone })",
    "new Intl.DateTimeFormat('en', { ...options, timeZone: zone })",
    'new Intl.NumberFormat(locale)',
    'at.toLocaleLowerCase(zone)',
    "at.localeCompare('b', zone)",
  ])('lets %s be', (text) => {
    expect(
      inCore(`import { Temporal } from 'temporal-polyfill'; export const f = (at: any, zone: any) => ${text};`),
    ).toEqual([]);
  });

  it.each([
    'new Date(at)',
    'new Date(at).getUTCHours()',
    'const document = paper(); document.pages',
    'part.process',
    'a = { console: 1 }',
    'type A = { readonly document: string }',
    'const { window } = plan; window.from',
    "a = 'Date.now()'",
  ])('lets %s be', (text) => {
    expect(inCore(`export const f = (at: number, part: any, plan: any, paper: any) => { ${text}; };`)).toEqual([]);
  });

  it('leaves tests and the other folders alone', () => {
    const text = 'Date.now();';
    expect(impurities({ path: 'core/job/a.test.ts', text })).toEqual([]);
    expect(impurities({ path: 'electron/service/a.ts', text })).toEqual([]);
  });
});
