import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { PAGE_KEY_MARK } from '../../core/contract/pageKey.ts';

/**
 * Lets one browser in: a token in the address, good once, is exchanged for a cookie and a page key that live as long as the
 * service. A browser gives cookies of a host to each of its ports, so another program's page gets ours too: calls need the
 * page key besides, which the browser keeps for this port alone.
 */
export type Session = {
  /** The way in, with the token: `/enter/…`. */
  readonly wayIn: string;
  /**
   * For the first who comes with the token; `undefined` for all others and ever after: the `Set-Cookie` value, and where the
   * page is, its key behind the `#`, which browsers send to nobody.
   */
  readonly enter: (pathname: string) => { readonly cookie: string; readonly location: string } | undefined;
  /** Whether a request's `Cookie` header holds the session. */
  readonly holds: (cookies: string | undefined) => boolean;
  /** Whether a call's header holds the page key. */
  readonly isOurPage: (key: string | undefined) => boolean;
};

const WAY_IN = '/enter/';

/** @param port Part of the cookie's name: browsers give a cookie to every port of the same host. */
export function createSession(port: number): Session {
  const token = randomBytes(32).toString('base64url');
  const secret = randomBytes(32).toString('base64url');
  const pageKey = randomBytes(32).toString('base64url');
  const name = `knowngood-${port}`;
  let used = false;
  return {
    wayIn: `${WAY_IN}${token}`,
    enter: (pathname) => {
      if (used || !pathname.startsWith(WAY_IN) || !same(pathname.slice(WAY_IN.length), token)) return undefined;
      used = true;
      return {
        cookie: `${name}=${secret}; Path=/; HttpOnly; SameSite=Strict`,
        location: `/#${PAGE_KEY_MARK}${pageKey}`,
      };
    },
    holds: (cookies) =>
      (cookies ?? '').split(';').some((pair) => {
        const [key = '', value = ''] = pair.trim().split('=');
        return key === name && same(value, secret);
      }),
    isOurPage: (key) => same(key ?? '', pageKey),
  };
}

/** Compares without telling by its time how much of a guess was right. */
function same(guess: string, secret: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(guess), digest(secret));
}
