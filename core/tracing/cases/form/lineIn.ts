import { nth } from '../../../figures/rows.ts';

/** The line, from 1, of the value at a path in a valid JSON text: of the deepest part of the path that is there. */
export function lineIn(text: string, path: readonly (string | number)[]): number {
  const tokens = [...text.matchAll(/"(?:[^"\\]|\\.)*"|[{}[\],:]|[^\s{}[\],:"]+/gs)].map(({ 0: token, index }) => ({
    token,
    index,
  }));
  let at = 0;
  let found = tokens[0]?.index ?? 0;
  for (const key of path) {
    const inside = childAt(tokens, at, key);
    if (inside === null) break;
    at = inside.value;
    found = inside.named;
  }
  return text.slice(0, found).split('\n').length;
}

type Token = { readonly token: string; readonly index: number };

/** Where a member's value stands among the tokens, and where its name (or an item itself) stands in the text. */
function childAt(tokens: readonly Token[], at: number, key: string | number): { value: number; named: number } | null {
  const opened = tokens[at]?.token;
  if (opened !== '{' && opened !== '[') return null;
  let [here, item] = [at + 1, 0];
  while (here < tokens.length && tokens[here]?.token !== '}' && tokens[here]?.token !== ']') {
    const first = nth(tokens, here);
    const value = opened === '{' ? here + 2 : here;
    if (opened === '{' ? JSON.parse(first.token) === key : item === Number(key)) return { value, named: first.index };
    here = afterValue(tokens, value);
    if (tokens[here]?.token === ',') here++;
    item++;
  }
  return null;
}

/** The place after a whole value. */
function afterValue(tokens: readonly Token[], at: number): number {
  let [depth, here] = [0, at];
  do {
    const token = tokens[here]?.token;
    if (token === '{' || token === '[') depth++;
    if (token === '}' || token === ']') depth--;
    here++;
  } while (depth > 0 && here < tokens.length);
  return here;
}
