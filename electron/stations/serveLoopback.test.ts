import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request as send } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createORPCClient } from '@orpc/client';
import { RPCLink } from '@orpc/client/fetch';
import { SimpleCsrfProtectionLinkPlugin } from '@orpc/client/plugins';
import type { ContractRouterClient } from '@orpc/contract';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { PAGE_KEY_HEADER } from '../../core/contract/pageKey.ts';
import { type smallContract, smallRouter } from '../../tests/builders/smallRouter.ts';
import { CONTENT_POLICY } from '../page/contentPolicy.ts';
import { type Loopback, serveLoopback } from './serveLoopback.ts';

type Answer = { readonly status: number; readonly headers: Record<string, unknown>; readonly body: string };

let shop: ReturnType<typeof smallRouter>;
let served: Loopback;
let screens: string;
let origin: string;
let cookie: string;
let page: string;

/** One request, byte for byte as given: no browser or library puts headers right. */
function ask(path: string, headers: Record<string, string> = {}, method = 'GET', body?: string): Promise<Answer> {
  const { hostname, port } = new URL(origin);
  return new Promise((resolve, reject) => {
    const asked = send({ hostname, port, path, method, headers }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (part) => {
        text += part;
      });
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }));
    });
    asked.on('error', reject).end(body);
  });
}

/** What our own page sends with a call. A test takes one away, or puts another in its place. */
const own = () => ({
  cookie,
  origin,
  [PAGE_KEY_HEADER]: page,
  'x-csrf-token': 'orpc',
  'content-type': 'application/json',
});
const call = (headers: Record<string, string>) => ask('/rpc/add', headers, 'POST', '{"json":{"text":"Kiln"}}');
const without = (name: string) => Object.fromEntries(Object.entries(own()).filter(([key]) => key !== name));

beforeEach(async () => {
  screens = mkdtempSync(join(tmpdir(), 'knowngood-loopback-'));
  writeFileSync(join(screens, 'index.html'), '<!doctype html><title>the page</title>');
  writeFileSync(join(`${screens}.js`), 'outside');
  shop = smallRouter();
  served = await serveLoopback({ router: shop.router, port: 0, screens });
  origin = new URL(served.address).origin;
  const entered = await ask(new URL(served.address).pathname);
  cookie = String(entered.headers['set-cookie']).split(';')[0] ?? '';
  page = String(entered.headers.location).split('page=')[1] ?? '';
});
afterEach(async () => {
  await served.stop();
  rmSync(screens, { recursive: true });
  rmSync(`${screens}.js`);
});

test('our own page comes in', async () => {
  expect((await call(own())).status).toBe(200);
  expect(shop.texts).toEqual(['Kiln']);
  expect((await ask('/', { cookie })).body).toContain('the page');
});

test('it is served on this computer alone, on a port of its own', () => {
  expect(served.address).toMatch(/^http:\/\/127\.0\.0\.1:[1-9]\d*\/enter\/[\w-]{43}$/);
});

test('at no other address of this computer does anybody answer', async () => {
  // Every address 127.x.x.x is this computer's, so a service on all addresses would answer here.
  const elsewhere = connect({ host: '127.0.0.2', port: Number(new URL(origin).port) });
  const came = await new Promise((done) =>
    elsewhere.on('connect', () => done('answered')).on('error', () => done('nobody')),
  );
  elsewhere.destroy();
  expect(came).toBe('nobody');
});

test('a form another page sends by itself is turned away for lack of our page’s mark, though it carries the cookie', async () => {
  const form = '--b\r\nContent-Disposition: form-data; name="data"\r\n\r\n{"json":{"text":"forged"}}\r\n--b--\r\n';
  // Even one that had come by the page's key.
  const headers = { cookie, origin, [PAGE_KEY_HEADER]: page, 'content-type': 'multipart/form-data; boundary=b' };
  expect((await ask('/rpc/add', headers, 'POST', form)).status).toBe(403);
  expect(shop.texts).toEqual([]);
  // The same form with the mark is a call: it was the mark that was missing.
  expect((await ask('/rpc/add', { ...headers, 'x-csrf-token': 'orpc' }, 'POST', form)).status).toBe(200);
});

test.each(['http://shop.example', 'http://127.0.0.1:1', 'null', 'http://127.0.0.1', 'https://127.0.0.1'])(
  'a call from the page at %s is turned away',
  async (foreign) => {
    expect((await call({ ...own(), origin: foreign })).status).toBe(403);
    expect((await ask('/', { cookie, origin: foreign })).status).toBe(403);
    expect(shop.texts).toEqual([]);
  },
);

test.each(['shop.example', 'shop.example:80', '127.0.0.1', '127.0.0.1:1', '127.0.0.1.shop.example'])(
  'a name that was made to point here, %s, is not served',
  async (host) => {
    const named = { host: host.endsWith(':80') ? `shop.example:${new URL(origin).port}` : host };
    expect((await call({ ...without('origin'), ...named })).status).toBe(421);
    expect((await ask('/', { cookie, ...named })).status).toBe(421);
    expect((await ask(new URL(served.address).pathname, named)).status).toBe(421);
    expect(shop.texts).toEqual([]);
  },
);

test('a foreign name whose page says the same origin is not served either', async () => {
  const host = `shop.example:${new URL(origin).port}`;
  expect((await call({ ...own(), host, origin: `http://${host}` })).status).toBe(421);
});

test('another program’s page on this computer gets our cookie from the browser, and can do nothing with it', async () => {
  expect(page).toMatch(/^[\w-]{43}$/);
  expect((await call(without(PAGE_KEY_HEADER))).status).toBe(403);
  expect((await call({ ...own(), [PAGE_KEY_HEADER]: 'x' })).status).toBe(403);
  // Neither the page it is given for the cookie nor any header of it says the key.
  const given = await ask('/', { cookie });
  expect(given.body + JSON.stringify(given.headers)).not.toContain(page);
});

test('without the cookie nothing is shown and nothing is done', async () => {
  expect((await call(without('cookie'))).status).toBe(403);
  expect(shop.texts).toEqual([]);
  const page = await ask('/');
  expect(page.status).toBe(403);
  expect(page.body).not.toContain('the page');
});

test.each(['', 'x', 'knowngood', '=', 'knowngood-1='])('a cookie of %j is none', async (other) => {
  const [name, value = ''] = cookie.split('=');
  expect((await call({ ...own(), cookie: `${name}=${other}` })).status).toBe(403);
  expect((await call({ ...own(), cookie: `other=${value}` })).status).toBe(403);
  expect((await call({ ...own(), cookie: `a=b; ${cookie}; c=d` })).status).toBe(200);
});

test('the address opens once: a second comer, with the right token, is refused', async () => {
  const again = await ask(new URL(served.address).pathname);
  expect(again.status).toBe(403);
  expect(again.headers).not.toHaveProperty('set-cookie');
  expect(again.body).toContain('This address opens once');
});

test('a wrong token opens nothing, and does not use up the right one', async () => {
  const fresh = await serveLoopback({ router: shop.router, port: 0, screens });
  origin = new URL(fresh.address).origin;
  const right = new URL(fresh.address).pathname;
  for (const path of ['/enter/', '/enter', `${right}x`, right.slice(0, -1), `/enter/${'A'.repeat(43)}`]) {
    expect(await ask(path)).toMatchObject({ status: 403 });
  }
  expect(await ask(right, {}, 'POST')).toMatchObject({ status: 403 });
  const entered = await ask(right);
  expect(entered).toMatchObject({ status: 303, headers: { location: expect.stringMatching(/^\/#page=[\w-]{43}$/) } });
  expect(String(entered.headers['set-cookie'])).toMatch(
    /^knowngood-\d+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/,
  );
  await fresh.stop();
});

test('the cookie of one run opens no other', async () => {
  const other = await serveLoopback({ router: shop.router, port: 0, screens });
  const old = cookie.split('=')[1];
  origin = new URL(other.address).origin;
  expect((await ask('/', { cookie: `knowngood-${new URL(origin).port}=${old}` })).status).toBe(403);
  await other.stop();
});

test('a call by GET, as a link or an image makes it, is refused', async () => {
  const data = encodeURIComponent('{"json":{"text":"forged"}}');
  expect((await ask(`/rpc/add?data=${data}`, own())).status).toBe(405);
  expect(shop.texts).toEqual([]);
});

test.each(['OPTIONS', 'PUT', 'DELETE', 'POST'])('the page’s files are for reading: %s is refused', async (method) => {
  const answer = await ask('/', own(), method);
  expect(answer.status).toBe(405);
  expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
});

test('no way of writing a path leads out of the page’s folder', async () => {
  const outside = `${screens.split('/').at(-1)}.js`;
  for (const path of [
    `/../${outside}`,
    `/%2e%2e/${outside}`,
    `/..%2f${outside}`,
    `/..%5c${outside}`,
    `//../${outside}`,
  ]) {
    const answer = await ask(path, { cookie });
    expect(answer.status).toBe(404);
    expect(answer.body).not.toContain('outside');
  }
});

test('every answer, good or bad, carries the policy', async () => {
  const answers = [
    await ask('/', { cookie }),
    await call(own()),
    await ask('/nowhere', { cookie }),
    await call(without('origin')),
  ];
  answers.push(await ask('/', { host: 'shop.example' }), await call(without('x-csrf-token')));
  for (const { headers } of answers) {
    expect(headers).toMatchObject({
      'content-security-policy': CONTENT_POLICY,
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
    });
  }
  const refused = await ask('/');
  expect(String(refused.headers['content-security-policy'])).toMatch(/^default-src 'none'; style-src 'sha256-/);
});

/** A request as bytes, for what no client would send. */
function askRaw(head: readonly string[], body = ''): Promise<string> {
  const { hostname, port } = new URL(origin);
  return new Promise((resolve, reject) => {
    let text = '';
    const line = connect({ host: hostname, port: Number(port) }, () =>
      line.write(`${[...head, 'connection: close'].join('\r\n')}\r\n\r\n${body}`),
    );
    line.setEncoding('utf8').on('data', (part) => {
      text += part;
    });
    line.on('close', () => resolve(text)).on('error', reject);
  });
}

test('a header that decides something and comes twice is refused in words', async () => {
  const all = { ...own(), host: new URL(origin).host, 'content-length': '24' };
  for (const name of ['host', 'origin', 'cookie', 'content-type', 'x-csrf-token', PAGE_KEY_HEADER]) {
    const head = Object.entries(all).map(([key, value]) => `${key}: ${value}`);
    const twice = head.find((line) => line.startsWith(`${name}: `)) ?? '';
    const answer = await askRaw(['POST /rpc/add HTTP/1.1', ...head, twice], '{"json":{"text":"Kiln"}}');
    expect([name, answer]).toEqual([name, expect.stringMatching(/^HTTP\/1\.1 400 [\s\S]*came twice/)]);
  }
  expect(shop.texts).toEqual([]);
});

test.each(['PUT', 'PATCH', 'DELETE', 'PROPFIND'])('a call by %s is refused in words', async (method) => {
  const answer = await ask('/rpc/add', own(), method, '{"json":{"text":"Kiln"}}');
  expect(answer).toMatchObject({ status: 405, headers: { allow: 'GET, HEAD, POST' } });
  expect(answer.body).toContain('nothing else is answered');
  expect(shop.texts).toEqual([]);
});

test('an address that is none is refused in words, and is no defect', async () => {
  const told = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const answer = await ask('//', { cookie });
  const logged = told.mock.calls.length;
  told.mockRestore();
  expect(answer.status).toBe(400);
  expect(answer.body).toContain('no address');
  expect(logged).toBe(0);
});

test('a text of a length that is not said, or longer than any, is refused before it is read', async () => {
  const head = Object.entries({ ...own(), host: new URL(origin).host }).map(([key, value]) => `${key}: ${value}`);
  const chunked = ['POST /rpc/add HTTP/1.1', ...head, 'transfer-encoding: chunked'];
  expect(await askRaw(chunked, '5\r\n[[[[[\r\n0\r\n\r\n')).toMatch(/^HTTP\/1\.1 411 /);
  const long = ['POST /rpc/add HTTP/1.1', ...head, `content-length: ${4 * 1024 * 1024 + 1}`];
  expect(await askRaw(long)).toMatch(/^HTTP\/1\.1 413 [\s\S]*longer than any text/);
});

test('whoever opens more connections than a browser has leaves the others theirs', async () => {
  const { hostname, port } = new URL(origin);
  const before = ask('/', { cookie });
  const many = Array.from({ length: 200 }, () => connect({ host: hostname, port: Number(port) }));
  let dropped = 0;
  for (const line of many) line.on('close', () => dropped++).on('error', () => undefined);
  expect((await before).status).toBe(200);
  await expect.poll(() => dropped).toBeGreaterThan(70);
  for (const line of many) line.destroy();
  await expect.poll(() => dropped).toBe(200);
  expect((await call(own())).status).toBe(200);
});

test('whoever comes by a page of another site, as the launcher’s own is, is led on by ours', async () => {
  const fresh = await serveLoopback({ router: shop.router, port: 0, screens });
  origin = new URL(fresh.address).origin;
  const entered = await ask(new URL(fresh.address).pathname, { 'sec-fetch-site': 'cross-site' });
  expect(entered).toMatchObject({ status: 200, headers: { 'cache-control': 'no-store' } });
  expect(entered.body).toMatch(/http-equiv="refresh" content="0;url=\/#page=[\w-]{43}"/);
  expect(String(entered.headers['set-cookie'])).toContain('SameSite=Strict');
  await fresh.stop();
});

test('a body larger than any photograph is refused', async () => {
  const type = 'multipart/form-data; boundary=b';
  const body = `--b\r\nContent-Disposition: form-data; name="data"\r\n\r\n${'x'.repeat(33 * 1024 * 1024)}\r\n--b--\r\n`;
  const answer = await ask('/rpc/add', { ...own(), 'content-type': type }, 'POST', body);
  expect(answer.status).toBe(413);
});

test('U+0000 and lone surrogates are refused at this door, with the field', async () => {
  for (const text of ['\\u0000', '\\ud83d']) {
    const answer = await ask('/rpc/add', own(), 'POST', `{"json":{"text":"${text}"}}`);
    expect(answer.status).toBe(400);
    expect(JSON.parse(answer.body).json.data.issues[0].path).toEqual(['text']);
  }
  expect(shop.texts).toEqual([]);
});

test('what is no JSON is refused, and the next call is served', async () => {
  expect((await ask('/rpc/add', own(), 'POST', '{"json":')).status).toBe(400);
  expect((await ask('/rpc/add', own(), 'POST', '[[[[')).status).toBe(400);
  expect((await call(own())).status).toBe(200);
});

test('of a defect, neither the asker nor the log learns what somebody entered', async () => {
  const told = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const answer = await ask('/rpc/fail', own(), 'POST', '{}');
  const logged = told.mock.calls.join('');
  told.mockRestore();
  expect(answer.status).toBe(500);
  expect(answer.body).not.toContain('Rosa');
  expect(logged).toContain('Defect in fail: TypeError');
  expect(logged).toContain('smallRouter');
  expect(logged).not.toContain('Rosa');
});

test('our own link carries texts, files and the change stream, and a window that leaves is let go', async () => {
  const small: ContractRouterClient<typeof smallContract> = createORPCClient(
    new RPCLink({
      url: `${origin}/rpc`,
      headers: { cookie, [PAGE_KEY_HEADER]: page },
      plugins: [new SimpleCsrfProtectionLinkPlugin()],
    }),
  );
  expect(await small.door()).toBe('loopback');
  expect(await small.weigh({ photo: new File([new Uint8Array(1234)], 'a.png') })).toBe(1234);
  const leaving = new AbortController();
  const changes = await small.changes({ since: null }, { signal: leaving.signal });
  expect((await changes.next()).value).toEqual({ seq: 0, streams: [], kinds: [] });
  await small.add({ text: 'Kiln' });
  expect((await changes.next()).value).toEqual({ seq: 1, streams: ['shop'], kinds: ['noted'] });
  leaving.abort();
  await expect.poll(() => shop.listening.size).toBe(0);
});

test('a port that is taken is said so by its error', async () => {
  const port = Number(new URL(origin).port);
  await expect(serveLoopback({ router: shop.router, port, screens })).rejects.toMatchObject({ code: 'EADDRINUSE' });
});
