/**
 * The path of a name that stands twice in one object of a JSON text, or `undefined`. JSON.parse keeps the last one
 * silently, so a fault listed twice under "chance" would vanish. The text must be valid JSON.
 */
export function doubledKey(json: string): string | undefined {
  const tokens = json.matchAll(/"(?:[^"\\]|\\.)*"|[{}[\],:]/gs);
  const open: { keys: Set<string> | undefined; at: number; key: string }[] = [];
  let text = '';
  for (const [token] of tokens) {
    const inner = open.at(-1);
    if (token === '{') open.push({ keys: new Set(), at: 0, key: '' });
    else if (token === '[') open.push({ keys: undefined, at: 0, key: '' });
    else if (token === '}' || token === ']') open.pop();
    else if (token === ',' && inner) inner.at++;
    else if (token === ':' && inner?.keys) {
      inner.key = String(JSON.parse(text));
      if (inner.keys.has(inner.key)) return pathOf(open);
      inner.keys.add(inner.key);
    } else text = token;
  }
  return undefined;
}

function pathOf(open: readonly { readonly keys: unknown; readonly at: number; readonly key: string }[]): string {
  return open
    .map(({ keys, at, key }) => (keys ? `.${key}` : `[${at}]`))
    .join('')
    .replace(/^\./, '');
}
