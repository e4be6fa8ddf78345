/** One structure of a report: its type number and the fields it prints. */
export type DmiRecord = {
  readonly handle: string;
  readonly type: number;
  readonly fields: ReadonlyMap<string, string>;
};

const HANDLE = /^Handle (0x[0-9A-Fa-f]+), DMI type (\d+), \d+ bytes/;
const FIELD = /^(?:\t| {4,8})([^\t:][^:]*):(.*)$/;

/** Splits dmidecode text into its structures. Lists below a field, and what is not understood, are left out. */
export function dmiRecords(text: string): readonly DmiRecord[] {
  const records: { handle: string; type: number; fields: Map<string, string> }[] = [];
  for (const line of text.split(/\r\n|\r|\n/)) {
    const start = HANDLE.exec(line);
    if (start) {
      records.push({ handle: (start[1] ?? '').toLowerCase(), type: Number(start[2]), fields: new Map() });
      continue;
    }
    const field = FIELD.exec(line);
    const record = records.at(-1);
    const name = field?.[1]?.trim();
    if (record && name && !record.fields.has(name))
      record.fields.set(name, (field?.[2] ?? '').replace(/\s+/g, ' ').trim());
  }
  return records;
}

/** Does this look like dmidecode text at all? */
export const looksLikeDmi = (text: string): boolean =>
  /^# dmidecode \d/m.test(text) || HANDLE.test(text) || /^Handle 0x[0-9A-Fa-f]+, DMI type \d+/m.test(text);

/** Texts that firmware prints where nobody filled anything in: no value. */
const PLACEHOLDER =
  /^(to be filled.*|default string|not specified|not provided|unknown|none|n\/a|<out of spec>|<bad index>|system (manufacturer|product name|version|serial number)|o\.?e\.?m\.?|undefined|empty|no dimm|-+|\.+|0+|x+)?$/i;

/** A field's value; null when it is absent or a placeholder. */
export function said(record: DmiRecord | undefined, field: string): string | null {
  const value = record?.fields.get(field);
  return value === undefined || PLACEHOLDER.test(value) ? null : value;
}

/** `2666 MT/s`, `1333 MHz`: one number for both; null when there is none. */
export function leadingNumberOf(text: string | null): number | null {
  const number = /^(\d+)/.exec(text ?? '')?.[1];
  return number === undefined ? null : Number(number);
}
