import { finite, wholeNumber } from '../values.ts';

/** One row of a drive's attribute table. */
export type SmartAttribute = {
  readonly id: number;
  readonly name: string;
  /** As printed: `12129 (59 125 0)`, `37330h+31m+10.730s`. */
  readonly raw: string;
  readonly failed: 'now' | 'before' | null;
};

const ROW =
  /^\s{0,3}(\d{1,3})\s+(\S+)\s+(\S+)\s+(\d{3}|---)\s+(\d{3}|---)\s+(\d{3}|---)\s+(?:(?:Pre-fail|Old_age)\s+(?:Always|Offline)\s+)?(\S+)\s+(\S.*)$/;

/** The number a row of the attribute table begins with, so that most rows need no closer look; NaN when none. */
export const rowId = (line: string): number => Number(/^\s{0,3}(\d{1,3})\s/.exec(line)?.[1]);

/** A row of the attribute table in either of the forms in which it is printed. */
export function attributeRow(line: string): SmartAttribute | null {
  const read = ROW.exec(line);
  if (!read) return null;
  const failed = /now/i.test(read[7] ?? '') ? 'now' : /past/i.test(read[7] ?? '') ? 'before' : null;
  return { id: Number(read[1]), name: read[2] ?? '', raw: (read[8] ?? '').trim(), failed };
}

/** The number a raw value begins with; what follows in brackets is something else. */
export function rawNumber(raw: string | undefined): number | null {
  const hex = /^0x([0-9a-f]{1,13})\b/i.exec(raw ?? '')?.[1];
  return hex === undefined ? wholeNumber(/^\s*\d+/.exec(raw ?? '')?.[0]) : Number.parseInt(hex, 16);
}

/** Full hours in attribute 9: some drives count minutes, half-minutes or seconds, and its name then says so. */
export function powerOnHours({ name, raw }: Pick<SmartAttribute, 'name' | 'raw'>): number | null {
  const hours = /^\s*(\d+)h\b/.exec(raw)?.[1] ?? /^\s*(\d+)h\+/.exec(raw)?.[1];
  if (hours !== undefined) return finite(Number(hours));
  const count = rawNumber(raw);
  if (count === null) return null;
  if (/half.?min/i.test(name)) return Math.floor(count / 120);
  if (/minutes/i.test(name)) return Math.floor(count / 60);
  if (/seconds/i.test(name)) return Math.floor(count / 3600);
  return /msec/i.test(name) ? null : count;
}

/** The health figures of a table: attribute 5 counts only where its name says that it counts reallocations. */
export function healthOf(attributes: readonly SmartAttribute[]) {
  const of = (id: number) => attributes.find((attribute) => attribute.id === id);
  const reallocated = attributes.find(({ id, name }) => id === 5 && /^reallocat/i.test(name));
  const hours = of(9);
  return {
    powerOnHours: hours ? powerOnHours(hours) : null,
    reallocated: rawNumber(reallocated?.raw),
    pending: rawNumber(of(197)?.raw),
    uncorrectable: rawNumber(of(198)?.raw),
    facts: {
      reportedUncorrectable: rawNumber(of(187)?.raw),
      commandTimeouts: rawNumber(of(188)?.raw),
      powerCycles: rawNumber(of(12)?.raw),
      celsius: rawNumber(of(194)?.raw) ?? rawNumber(of(190)?.raw),
      failingNow: attributes.filter(({ failed }) => failed === 'now').map(({ name }) => name),
      failedBefore: attributes.filter(({ failed }) => failed === 'before').map(({ name }) => name),
    },
  };
}
