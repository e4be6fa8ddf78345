import type { IncomingHttpHeaders } from 'node:http';

/** Why a request is turned away before anything looks at it. */
export type TurnedAway = { readonly status: 403 | 421; readonly why: 'host' | 'origin' };

/**
 * Only requests made to our own address by our own page, or by no page at all, come in.
 * A foreign `Host` is a name that was made to point here (DNS rebinding); a foreign `Origin` is another page's doing.
 *
 * @param port The port served on; the same host at another port is another's page.
 */
export function turnAway(headers: IncomingHttpHeaders, port: number): TurnedAway | undefined {
  const ours = [`127.0.0.1:${port}`, `localhost:${port}`];
  const { host, origin } = headers;
  if (host === undefined || !ours.includes(host)) return { status: 421, why: 'host' };
  if (origin !== undefined && origin !== `http://${host}`) return { status: 403, why: 'origin' };
  return undefined;
}
