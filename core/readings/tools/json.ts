/** A value of parsed JSON of which nothing is known yet. */
export type ToolJson = { readonly [key: string]: unknown };

/** Is it an object, and no list? */
export const isObject = (value: unknown): value is ToolJson =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The object under a key of its own; an empty one where there is none. */
export const objectIn = (from: ToolJson, key: string): ToolJson => {
  const value = Object.hasOwn(from, key) ? from[key] : undefined;
  return isObject(value) ? value : {};
};

/** The list under a key of its own; an empty one where there is none. */
export const listIn = (from: ToolJson, key: string): readonly unknown[] => {
  const value = Object.hasOwn(from, key) ? from[key] : undefined;
  return Array.isArray(value) ? value : [];
};

/** The text under a key of its own; null where there is none. */
export const textIn = (from: ToolJson, key: string): string | undefined => {
  const value = Object.hasOwn(from, key) ? from[key] : undefined;
  return typeof value === 'string' ? value : typeof value === 'number' ? String(value) : undefined;
};

/** The number under a key of its own; null where there is none. */
export const numberIn = (from: ToolJson, key: string): number | null => {
  const value = Object.hasOwn(from, key) ? from[key] : undefined;
  return typeof value === 'number' && Number.isFinite(value) && value >= 0 ? value : null;
};

/** The yes or no under a key of its own; null where there is none. */
export const flagIn = (from: ToolJson, key: string): boolean | null => {
  const value = Object.hasOwn(from, key) ? from[key] : undefined;
  return typeof value === 'boolean' ? value : null;
};

export type ParsedJson = { readonly value: unknown; readonly cut: boolean };

/** First characters of the lines that printed JSON has; any other ends a report that was cut off. */
const JSON_LINE = /[\s"{}[\],:\d.+\-eEtfnrualsx]/;

/**
 * Where a JSON value that starts here ends: behind its last bracket, or where it is cut off. `tooDeep` when it nests
 * deeper than any report; it is then not to be parsed.
 */
export function endOfJson(text: string, start: number): { readonly end: number; readonly tooDeep: boolean } {
  let depth = 0;
  let deepest = 0;
  const until = (end: number) => ({ end, tooDeep: deepest > DEEPEST });
  for (let at = start; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === QUOTE) {
      at = endOfText(text, at + 1);
      if (text.charCodeAt(at) === LINE_END) return until(at + 1);
    } else if (code === 123 || code === 91) {
      depth += 1;
      if (depth > deepest) deepest = depth;
    } else if (code === 125 || code === 93) {
      depth -= 1;
      if (depth === 0) return until(at + 1);
    } else if (code === LINE_END && at + 1 < text.length && !JSON_LINE.test(text.charAt(at + 1))) return until(at + 1);
  }
  return until(text.length);
}

const [QUOTE, LINE_END, BACKSLASH] = [34, 10, 92];

/** Where a text in JSON ends: at its quote, at the line end that it must not have, or at the end of all. */
function endOfText(text: string, start: number): number {
  for (let at = start; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === QUOTE || code === LINE_END) return at;
    if (code === BACKSLASH) at += 1;
    else if (at - start > LONG) {
      const stretch = /[^"\\\n]*/y;
      stretch.lastIndex = at;
      stretch.test(text);
      at = stretch.lastIndex - 1;
    }
  }
  return text.length;
}

/** In texts longer than this it pays to look for the next character of interest by a pattern. */
const LONG = 64;

/**
 * Parses JSON that may have been cut off: what stands before the cut is kept as far as its values are whole.
 * `null` when it is no JSON even so. Takes time in proportion to the text.
 */
export function parseJson(text: string): ParsedJson | null {
  return parsed(text, false) ?? mended(text);
}

function parsed(text: string, cut: boolean): ParsedJson | null {
  try {
    const value: unknown = JSON.parse(text);
    return { value, cut };
  } catch {
    return null;
  }
}

/** Goes back to the last place where a value was whole, and closes what is open there. */
function mended(text: string): ParsedJson | null {
  const open: string[] = [];
  let whole = 0;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === QUOTE) at = endOfText(text, at + 1);
    else if (code === 123 || code === 91) {
      open.push(code === 123 ? '}' : ']');
      whole = at + 1;
    } else if (code === 125 || code === 93) {
      open.pop();
      whole = at + 1;
    } else if (code === 44) whole = at;
  }
  return whole === 0 ? null : parsed(text.slice(0, whole) + open.reverse().join(''), true);
}

/** No report nests deeper; a deeper one is made to do harm. */
export const DEEPEST = 100;
