/** A value of parsed JSON of which nothing is known yet. */
export type Json = { readonly [key: string]: unknown };

export const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
export const objectIn = (from: Json, key: string): Json => {
  const value = Object.hasOwn(from, key) ? from[key] : undefined;
  return isObject(value) ? value : {};
};
export const listIn = (from: Json, key: string): readonly unknown[] => {
  const value = Object.hasOwn(from, key) ? from[key] : undefined;
  return Array.isArray(value) ? value : [];
};
export const textIn = (from: Json, key: string): string | undefined => {
  const value = Object.hasOwn(from, key) ? from[key] : undefined;
  return typeof value === 'string' ? value : typeof value === 'number' ? String(value) : undefined;
};
export const numberIn = (from: Json, key: string): number | null => {
  const value = Object.hasOwn(from, key) ? from[key] : undefined;
  return typeof value === 'number' && Number.isFinite(value) && value >= 0 ? value : null;
};
export const flagIn = (from: Json, key: string): boolean | null => {
  const value = Object.hasOwn(from, key) ? from[key] : undefined;
  return typeof value === 'boolean' ? value : null;
};

export type ParsedJson = { readonly value: unknown; readonly cut: boolean };

/**
 * Parses JSON that may have been cut off: what stands before the cut is kept as far as its values are whole.
 * `null` when it is no JSON even so. Takes time in proportion to the text.
 */
export function parseJson(text: string): ParsedJson | null {
  return parsed(text, false) ?? mended(text);
}

function parsed(text: string, cut: boolean): ParsedJson | null {
  try {
    return { value: JSON.parse(text) as unknown, cut };
  } catch {
    return null;
  }
}

/** Goes back to the last place where a value was whole, and closes what is open there. */
function mended(text: string): ParsedJson | null {
  const open: string[] = [];
  let whole = 0;
  let closers = '';
  let inText = false;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (inText) {
      if (code === 92) at += 1;
      else if (code === 34) inText = false;
    } else if (code === 34) inText = true;
    else if (code === 123 || code === 91) {
      open.push(code === 123 ? '}' : ']');
      if (open.length > DEEPEST) return null;
      whole = at + 1;
      closers = open.toReversed().join('');
    } else if (code === 125 || code === 93) {
      open.pop();
      whole = at + 1;
      closers = open.toReversed().join('');
    } else if (code === 44) {
      whole = at;
      closers = open.toReversed().join('');
    }
  }
  return whole === 0 ? null : parsed(text.slice(0, whole) + closers, true);
}

/** No report nests deeper; a deeper one is made to do harm. */
export const DEEPEST = 100;
