import { createHash } from 'node:crypto';
import { SECURITY_HEADERS } from './contentPolicy.ts';

const STYLE = `
:root { color-scheme: light dark; --ground: #EEE9DF; --ink: #211D18; --line: #7F7666; }
@media (prefers-color-scheme: dark) { :root { --ground: #151311; --ink: #F3EDE1; --line: #8A8172; } }
body { margin: 0; padding: 40px; background: var(--ground); color: var(--ink); font: 18px/1.36 "Source Sans 3", sans-serif; }
main { max-width: 42em; border-top: 2px solid var(--line); padding-top: 18px; }
h1 { font-size: 24px; line-height: 1.18; font-weight: 600; } h2 { font-size: 18px; font-weight: 600; }
code { font-size: 17px; overflow-wrap: anywhere; }
`;
const POLICY = [
  "default-src 'none'",
  `style-src 'sha256-${createHash('sha256').update(STYLE).digest('base64')}'`,
  "base-uri 'none'",
  "frame-ancestors 'none'",
  "form-action 'none'",
].join('; ');

/** A piece of a plain page: a heading, a paragraph, something to read exactly, or numbered ways. */
export type PagePiece =
  | { readonly head: string }
  | { readonly say: string }
  | { readonly exactly: string }
  | { readonly ways: readonly string[] };

/**
 * A page without script for when the real one cannot be shown: its whole text is escaped, its headers let nothing run.
 *
 * @param goesTo Where it goes by itself, at once.
 */
export function plainPage(language: string, title: string, pieces: readonly PagePiece[], goesTo?: string) {
  const leads = goesTo === undefined ? '' : `<meta http-equiv="refresh" content="0;url=${escaped(goesTo)}">`;
  const body = `<!doctype html><html lang="${escaped(language)}"><head><meta charset="utf-8">${leads}<title>${escaped(title)}</title><style>${STYLE}</style></head><body><main><h1>${escaped(title)}</h1>${pieces.map(drawn).join('')}</main></body></html>`;
  return {
    body,
    headers: { ...SECURITY_HEADERS, 'Content-Security-Policy': POLICY, 'Content-Type': 'text/html; charset=utf-8' },
  };
}

function drawn(piece: PagePiece): string {
  if ('head' in piece) return `<h2>${escaped(piece.head)}</h2>`;
  if ('say' in piece) return `<p>${escaped(piece.say)}</p>`;
  if ('exactly' in piece) return `<p><code>${escaped(piece.exactly)}</code></p>`;
  return `<ol>${piece.ways.map((way) => `<li>${escaped(way)}</li>`).join('')}</ol>`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.codePointAt(0)};`);
}
