import type { PlanRefusal, PlanRefusalName } from './planRefusal.ts';

/** Why a file is not a tracing problem: always the file and the field, and what is wrong in `refused`. */
export type BadFile = PlanRefusal & { readonly file: string; readonly field: string };

/** Thrown while a file is read, caught in `parseProblem`. */
export class BadField extends Error {
  readonly refused: PlanRefusalName;
  readonly field: string;
  readonly facts: Readonly<Record<string, unknown>>;

  constructor(refused: PlanRefusalName, field: string, facts: Readonly<Record<string, unknown>> = {}) {
    super(refused);
    this.refused = refused;
    this.field = field;
    this.facts = facts;
  }
}

export type Fields = Readonly<Record<string, unknown>>;

/** An object with its fields. @throws {BadField} `missing`, `not-an-object`. */
export function asFields(value: unknown, field: string): Fields {
  if (value === undefined) throw new BadField('missing', field);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new BadField('not-an-object', field);
  return value as Fields;
}

/** An own field, never something inherited: ids come from outside and may be called "constructor". */
export const get = (fields: Fields, name: string): unknown => (Object.hasOwn(fields, name) ? fields[name] : undefined);

/** A list. @throws {BadField} `missing`, `not-a-list`. */
export function asList(value: unknown, field: string): readonly unknown[] {
  if (value === undefined) throw new BadField('missing', field);
  if (!Array.isArray(value)) throw new BadField('not-a-list', field);
  return value;
}

/** A list that may be left out: then empty. @throws {BadField} `not-a-list`. */
export const listOrNone = (value: unknown, field: string): readonly unknown[] =>
  value === undefined ? [] : asList(value, field);

/** A finite number, 0 or more: minutes, weights, chances. @throws {BadField} `missing`, `not-a-number`, `negative`. */
export function asNumber(value: unknown, field: string): number {
  if (value === undefined) throw new BadField('missing', field);
  if (typeof value !== 'number' || !Number.isFinite(value)) throw new BadField('not-a-number', field);
  if (value < 0) throw new BadField('negative', field, { value });
  return value;
}

/** An id: any text but the empty one. @throws {BadField} `missing`, `not-an-id`. */
export function asId(value: unknown, field: string): string {
  if (value === undefined) throw new BadField('missing', field);
  if (typeof value !== 'string' || value === '') throw new BadField('not-an-id', field);
  return value;
}

/**
 * Numbers ids in order, from 0. `fieldOf` names the place of an id in the file.
 * @throws {BadField} `doubled-id`, with the id, where one comes twice.
 */
export function numberIds(ids: readonly string[], fieldOf: (at: number) => string): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  ids.forEach((id, at) => {
    if (numbers.has(id)) throw new BadField('doubled-id', fieldOf(at), { id });
    numbers.set(id, at);
  });
  return numbers;
}

/** The number of an id that was declared before. @throws {BadField} `unknown-id`, and as `asId`. */
export function numberOf(id: unknown, numbers: ReadonlyMap<string, number>, field: string): number {
  const number = numbers.get(asId(id, field));
  if (number === undefined) throw new BadField('unknown-id', field, { id });
  return number;
}
