/** A JSON value without numbers that JSON cannot carry. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** Is it JSON all the way down: no number that JSON cannot carry, nothing left undefined, no object but a plain one? */
export function isJson(value: unknown): value is Json {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return true;
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object') return false;
  if (Array.isArray(value)) return value.every(isJson);
  const form = Object.getPrototypeOf(value);
  return (form === Object.prototype || form === null) && Object.values(value).every(isJson);
}
