/** Lists and tables whose entries are all known when the program is built. */

/** The names of a table of ours, in its own order. Only for one written down as a whole: no type tells of further names. */
export const keysOf = <Table extends object>(table: Table): readonly (keyof Table & string)[] =>
  Object.keys(table) as (keyof Table & string)[];

/** Is it a name of this table? */
export const isKeyOf = <Table extends object>(table: Table, name: string): name is keyof Table & string =>
  Object.hasOwn(table, name);

/**
 * A name that stands in this table.
 * @throws {RangeError} where it does not: a defect of what was delivered.
 */
export function keyOf<Table extends object>(table: Table, name: string): keyof Table & string {
  if (!isKeyOf(table, name)) throw new RangeError(`no ${name} among ${Object.keys(table).join(', ')}`);
  return name;
}

/** Is it one of this list? */
export const isOneOf = <One>(list: readonly One[], value: unknown): value is One => list.some((one) => one === value);

/**
 * What stands in this list.
 * @throws {RangeError} where it does not: a defect of what was delivered.
 */
export function oneOf<One>(list: readonly One[], value: unknown): One {
  if (!isOneOf(list, value)) throw new RangeError(`no ${String(value)} among ${list.join(', ')}`);
  return value;
}

/** A table with an entry for each of these names: true where the list holds every name of its type, as it should. */
export const tableOf = <Name extends string, Entry>(
  names: readonly Name[],
  entryOf: (name: Name) => Entry,
): { readonly [name in Name]: Entry } =>
  Object.fromEntries(names.map((name) => [name, entryOf(name)])) as { readonly [name in Name]: Entry };
