import type { IncomingMessage } from 'node:http';
import { PAGE_KEY_HEADER } from '../../core/contract/pageKey.ts';

/** Why a request is turned away before anything looks at it; each has its words in `assets/words/en/shell.json`. */
export type TurnedAway = {
  readonly status: 400 | 403 | 405 | 411 | 413 | 421;
  readonly why: 'host' | 'origin' | 'doubled' | 'method' | 'address' | 'length' | 'large';
};

type Asked = Pick<IncomingMessage, 'headers' | 'headersDistinct' | 'method' | 'url'>;

/** All that our page sends. */
const METHODS: readonly string[] = ['GET', 'HEAD', 'POST'];
/** Headers that something is decided by: of two, somebody else may have gone by the other. */
const ONCE = ['host', 'origin', 'cookie', 'content-type', 'x-csrf-token', PAGE_KEY_HEADER];
/** Room for the longest report that a machine makes of itself; read in one go, so that more would keep others waiting. */
const LARGEST_TEXT = 4 * 1024 * 1024;

/**
 * Only requests made to our own address by our own page, or by no page at all, come in.
 * A foreign `Host` is a name that was made to point here (DNS rebinding); a foreign `Origin` is another page's doing.
 *
 * @param port The port served on; the same host at another port is another's page.
 */
export function turnAway(request: Asked, port: number): TurnedAway | undefined {
  const ours = [`127.0.0.1:${port}`, `localhost:${port}`];
  const { host, origin } = request.headers;
  if (ONCE.some((name) => (request.headersDistinct[name]?.length ?? 0) > 1)) return { status: 400, why: 'doubled' };
  if (host === undefined || !ours.includes(host)) return { status: 421, why: 'host' };
  if (origin !== undefined && origin !== `http://${host}`) return { status: 403, why: 'origin' };
  if (!METHODS.includes(request.method ?? '')) return { status: 405, why: 'method' };
  if (!URL.canParse(request.url ?? '', `http://${host}`)) return { status: 400, why: 'address' };
  return tooMuch(request);
}

/** Files come as a form, and are held to their own limit where they are read. */
function tooMuch({ method, headers }: Asked): TurnedAway | undefined {
  if (method !== 'POST' || headers['content-type']?.startsWith('multipart/form-data')) return undefined;
  const length = headers['content-length'];
  if (length === undefined) return { status: 411, why: 'length' };
  return Number(length) > LARGEST_TEXT ? { status: 413, why: 'large' } : undefined;
}
