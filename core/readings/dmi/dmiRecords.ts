/** One record of an SMBIOS table as printed. */
export type DmiRecord = {
  readonly handle: string | null;
  readonly type: number;
  /** Fields of the record itself, not those of lists inside it; the first of a name counts. */
  readonly fields: ReadonlyMap<string, string>;
  /** The text ends inside it. */
  readonly cut: boolean;
};
export type DmiTable = {
  readonly records: readonly DmiRecord[];
  /** The text ends before the table does. */
  readonly cut: boolean;
  /** What the tool itself says against the table, as printed. */
  readonly complaints: readonly string[];
};

/** Types of record that are read (DSP0134 clause 7). */
const READ = new Set([0, 1, 2, 3, 4, 9, 16, 17, 127]);

/** Titles stand for types where the tool was asked to leave the handles out. */
const TYPE_OF_TITLE: ReadonlyMap<string, number> = new Map(
  Object.entries({
    'BIOS Information': 0,
    'System Information': 1,
    'Base Board Information': 2,
    'Chassis Information': 3,
    'Processor Information': 4,
    'System Slot Information': 9,
    'Physical Memory Array': 16,
    'Memory Device': 17,
    'End Of Table': 127,
  }),
);

/** Whether a line begins a record, by its handle or by a title that only this tool prints. */
export const beginsDmi = (line: string): boolean =>
  line.startsWith('# dmidecode ') || handleIn(line) !== null || TYPE_OF_TITLE.has(line);

/** The characters such a line begins with. */
export const DMI_FIRST_CHARS: string = ['# dmidecode', 'Handle', ...TYPE_OF_TITLE.keys()]
  .map((begin) => begin.charAt(0))
  .join('');

const HANDLE = /^Handle 0x([0-9A-Fa-f]+), DMI type (\d{1,3})/;
const handleIn = (line: string): RegExpExecArray | null => (line.startsWith('Handle 0x') ? HANDLE.exec(line) : null);

const COMPLAINT = /^(?:Wrong DMI structures|Invalid entry length|.{0,80}DMI table is broken|<TRUNCATED>)/;
/** Of the types that are read. No machine's table has as many; what stands behind them is left out. */
const MOST_RECORDS = 4096;

const TAB = 9;
const BLANK = 32;
const END_OF_TABLE = 127;

type Open = {
  readonly handle: string | null;
  readonly type: number;
  readonly fields: Map<string, string>;
  indent: number;
  last: string | null;
};

/** Reads the records of a table, whole or part of one. Never throws; takes time in proportion to the text. */
export function dmiRecords(text: string): DmiTable {
  const reader = new Reader(text);
  for (let at = 0; at < text.length && !reader.isFull; ) {
    const found = text.indexOf('\n', at);
    const end = found < 0 ? text.length : found;
    reader.line(at, end);
    at = end + 1;
  }
  return reader.finish();
}

class Reader {
  readonly #text: string;
  readonly #records: DmiRecord[] = [];
  /** The first record of each handle: a table printed twice is one table. */
  readonly #byHandle = new Map<string, DmiRecord>();
  readonly #complaints: string[] = [];
  #open: Open | null = null;
  /** A handle was read and its title is still to come. */
  #underHandle = false;
  #blankAfter = false;
  /** The tool said where the whole table lies, so its end is to be expected. */
  #announced = false;
  #ended = false;
  #seen = 0;

  constructor(text: string) {
    this.#text = text;
  }

  get isFull(): boolean {
    return this.#seen >= MOST_RECORDS;
  }

  line(at: number, end: number): void {
    if (at === end) {
      this.#blankAfter = true;
      return;
    }
    this.#blankAfter = false;
    const first = this.#text.charCodeAt(at);
    if (first === TAB || first === BLANK) {
      if (this.#open) readField(this.#open, this.#text, at, end);
      if (this.#text.charCodeAt(at + 1) === OPEN_ANGLE) this.#complaint(this.#text.slice(at, end).trim());
    } else this.#heading(this.#text.slice(at, end));
  }

  finish(): DmiTable {
    const open = this.#open;
    const inside = open !== null && open.type !== END_OF_TABLE && !this.#blankAfter && !this.#ended;
    // The last line is worth nothing when nobody can tell whether it goes on.
    if (open?.last && inside && !this.#text.endsWith('\n')) open.fields.delete(open.last);
    this.#close(inside);
    const broken = this.#complaints.some((line) => line.includes('broken'));
    return {
      records: this.#records,
      cut: inside || broken || this.isFull || (this.#announced && !this.#ended),
      complaints: this.#complaints,
    };
  }

  #heading(line: string): void {
    const handle = handleIn(line);
    const type = TYPE_OF_TITLE.get(line);
    if (handle) this.#begin(handle[1] ?? null, Number(handle[2]));
    else if (this.#underHandle) this.#underHandle = false;
    else if (this.#complaint(line)) return;
    else if (line.startsWith('Table at ')) this.#announced = true;
    else if (type !== undefined) this.#begin(null, type);
    else if (!this.#open) return;
    else if (line.includes(':')) readField(this.#open, line, 0, line.length);
    else this.#close(false);
  }

  #begin(handle: string | null, type: number): void {
    this.#close(false);
    this.#underHandle = handle !== null;
    this.#ended ||= type === END_OF_TABLE;
    if (READ.has(type)) this.#open = { handle, type, fields: new Map(), indent: -1, last: null };
  }

  #close(cut: boolean): void {
    const open = this.#open;
    this.#open = null;
    if (!open) return;
    this.#seen += 1;
    const { handle, type, fields } = open;
    const key = `${handle} ${type}`;
    const before = handle === null ? undefined : this.#byHandle.get(key);
    if (before && sameFields(before.fields, fields)) return;
    const record = { handle, type, fields, cut };
    this.#records.push(record);
    if (handle !== null && !before) this.#byHandle.set(key, record);
  }

  #complaint(line: string): boolean {
    const is = COMPLAINT.test(line);
    if (is) this.#complaints.push(line);
    return is;
  }
}

const sameFields = (a: DmiRecord['fields'], b: DmiRecord['fields']): boolean =>
  a.size === b.size && [...a].every(([name, value]) => b.get(name) === value);

const OPEN_ANGLE = 60;

function readField(open: Open, text: string, at: number, end: number): void {
  open.last = null;
  let start = at;
  while (start < end && (text.charCodeAt(start) === TAB || text.charCodeAt(start) === BLANK)) start += 1;
  const indent = start - at;
  if (open.indent < 0) open.indent = indent;
  if (indent > open.indent) return;
  const colon = text.indexOf(':', start);
  if (colon < 0 || colon >= end) return;
  const name = text.slice(start, colon);
  open.last = name;
  if (!open.fields.has(name)) open.fields.set(name, text.slice(colon + 1, end));
}
