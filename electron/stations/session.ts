import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** Lets one browser in: a token in the address, good once, is exchanged for a cookie that lives as long as the service. */
export type Session = {
  /** The way in, with the token: `/enter/…`. */
  readonly wayIn: string;
  /** The `Set-Cookie` value for the first who comes with the token; `undefined` for all others and ever after. */
  readonly enter: (pathname: string) => string | undefined;
  /** Whether a request's `Cookie` header holds the session. */
  readonly holds: (cookies: string | undefined) => boolean;
};

const WAY_IN = '/enter/';

/** @param port Part of the cookie's name: browsers give a cookie to every port of the same host. */
export function createSession(port: number): Session {
  const token = randomBytes(32).toString('base64url');
  const secret = randomBytes(32).toString('base64url');
  const name = `knowngood-${port}`;
  let used = false;
  return {
    wayIn: `${WAY_IN}${token}`,
    enter: (pathname) => {
      if (used || !pathname.startsWith(WAY_IN) || !same(pathname.slice(WAY_IN.length), token)) return undefined;
      used = true;
      return `${name}=${secret}; Path=/; HttpOnly; SameSite=Strict`;
    },
    holds: (cookies) =>
      (cookies ?? '').split(';').some((pair) => {
        const [key = '', value = ''] = pair.trim().split('=');
        return key === name && same(value, secret);
      }),
  };
}

/** Compares without telling by its time how much of a guess was right. */
function same(guess: string, secret: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(guess), digest(secret));
}
