const LONE_SURROGATE = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/;

/**
 * The one text of a JSON value: the same value gives the same characters on every machine, so that it can be hashed.
 * Properties are sorted by their UTF-16 code units; numbers and strings are written as ECMAScript writes them.
 * A property whose value is `undefined` is left out, as `JSON.stringify` does.
 *
 * @throws {TypeError} For what JSON cannot carry (NaN, infinities, lone surrogates, functions, `undefined` in a list,
 *   objects of a class): a caller's defect. The message names the place, never the value.
 * Source: RFC 8785, JSON Canonicalization Scheme.
 */
export function canonicalJson(value: unknown): string {
  return write(value, '');
}

function write(value: unknown, path: string): string {
  if (value === null || value === true || value === false) return String(value);
  if (typeof value === 'number') return writeNumber(value, path);
  if (typeof value === 'string') return writeString(value, path);
  if (Array.isArray(value)) return `[${value.map((item, index) => write(item, `${path}/${index}`)).join(',')}]`;
  if (isPlain(value)) return writeObject(value, path);
  throw new TypeError(`No JSON at ${path || '/'}: ${typeof value}`);
}

function writeNumber(value: number, path: string): string {
  if (!Number.isFinite(value)) throw new TypeError(`No JSON at ${path || '/'}: a number that is not finite`);
  return JSON.stringify(value);
}

function writeString(value: string, path: string): string {
  if (LONE_SURROGATE.test(value)) throw new TypeError(`No JSON at ${path || '/'}: half of a surrogate pair`);
  return JSON.stringify(value);
}

function writeObject(value: Readonly<Record<string, unknown>>, path: string): string {
  const members = Object.keys(value)
    .filter((name) => value[name] !== undefined)
    // The standard asks for the order of UTF-16 code units, which is what comparing two strings does here.
    .sort((a, b) => (a < b ? -1 : 1))
    .map((name) => `${writeString(name, path)}:${write(value[name], `${path}/${name}`)}`);
  return `{${members.join(',')}}`;
}

function isPlain(value: unknown): value is Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null) return false;
  const prototype = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
