import { createReadStream } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { BodyLimitPlugin, RPCHandler } from '@orpc/server/node';
import { SimpleCsrfProtectionHandlerPlugin } from '@orpc/server/plugins';
import { PAGE_KEY_HEADER } from '../../core/contract/pageKey.ts';
import { SECURITY_HEADERS } from '../page/contentPolicy.ts';
import { pageFile } from '../page/pageFile.ts';
import { plainPage } from '../page/plainPage.ts';
import type { Backing } from '../service/backing.ts';
import { newSession } from '../service/people/session.ts';
import { doorkeepers } from '../service/transport/doors.ts';
import { tellDefect } from '../service/transport/tellDefect.ts';
import { shellWords } from '../words/shellWords.ts';
import { turnAway } from './atTheDoor.ts';
import { createSession, type Session } from './session.ts';

/** One browser's windows, with room for what is slow to let go. */
const MOST_CONNECTIONS = 128;
/** Nothing comes from farther than this computer: whoever takes longer holds a connection that others wait for. */
const HEADERS_WITHIN_MS = 10_000;
const REQUEST_WITHIN_MS = 60_000;
const CHECKED_EVERY_MS = 2000;
/** Room for a photograph of 2,048 pixels a side and what goes with it; more is refused unread. */
const LARGEST_BODY = 32 * 1024 * 1024;

export type Loopback = { readonly address: string; readonly stop: () => Promise<void> };

/**
 * Serves the screens and the procedures to a browser on this computer, on 127.0.0.1 alone.
 *
 * @param options `port` 0 takes any free one; `screens` is the built page's folder.
 * @returns the address with its one-time token, and how to stop. Rejects with the system's error when the port is taken.
 */
export async function serveLoopback(options: {
  readonly router: Backing['router'];
  readonly port: number;
  readonly screens: string;
}): Promise<Loopback> {
  const handler = new RPCHandler(options.router, {
    clientInterceptors: doorkeepers,
    plugins: [new SimpleCsrfProtectionHandlerPlugin(), new BodyLimitPlugin({ maxBodySize: LARGEST_BODY })],
  });
  let answer: (request: IncomingMessage, response: ServerResponse) => Promise<void>;
  const server = createServer({ connectionsCheckingInterval: CHECKED_EVERY_MS }, (request, response) => {
    answer(request, response).catch((error: unknown) => {
      tellDefect('an answer over loopback', error);
      response.destroy();
    });
  });
  server.maxConnections = MOST_CONNECTIONS;
  server.headersTimeout = HEADERS_WITHIN_MS;
  server.requestTimeout = REQUEST_WITHIN_MS;
  await new Promise<void>((done, failed) => {
    server.once('error', failed).listen(options.port, '127.0.0.1', done);
  });
  const at = server.address();
  if (at === null || typeof at === 'string') throw new Error('The loopback server has no port');
  const { port } = at;
  const session = createSession(port);
  // One browser comes in, so all who hold its cookie stand at one screen.
  const here = newSession('loopback');
  answer = async (request, response) => {
    for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
    const turned = turnAway(request, port);
    if (turned) {
      if (turned.why === 'method') response.setHeader('Allow', 'GET, HEAD, POST');
      plain(response, turned.status, shellWords.door['turned-away'][turned.why]);
      return;
    }
    const { pathname } = new URL(request.url ?? '', `http://127.0.0.1:${port}`);
    if (enters(session, request, pathname, response)) return;
    const calls = pathname.startsWith('/rpc');
    const key = request.headers[PAGE_KEY_HEADER];
    if (!session.holds(request.headers.cookie) || (calls && !session.isOurPage(String(key ?? ''))))
      refuseEntry(response);
    else if (
      !(await handler.handle(request, response, { prefix: '/rpc', context: { door: 'loopback', session: here } }))
        .matched
    ) {
      sendFile(options.screens, request, pathname, response);
    }
  };
  return {
    address: `http://127.0.0.1:${port}${session.wayIn}`,
    stop: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

function enters(session: Session, request: IncomingMessage, pathname: string, response: ServerResponse): boolean {
  const entered = request.method === 'GET' ? session.enter(pathname) : undefined;
  if (!entered) return false;
  const { cookie, location } = entered;
  // From a page of another site, as the launcher's own is, browsers do not send a strict cookie on, so that ours leads.
  const from = request.headers['sec-fetch-site'];
  if (from !== undefined && from !== 'none') {
    const page = plainPage(shellWords.language, shellWords.name, [], location);
    response.writeHead(200, { ...page.headers, 'Set-Cookie': cookie, 'Cache-Control': 'no-store' }).end(page.body);
    return true;
  }
  response.writeHead(303, { 'Set-Cookie': cookie, Location: location, 'Cache-Control': 'no-store' }).end();
  return true;
}

function refuseEntry(response: ServerResponse): void {
  const { title, says, next } = shellWords.door;
  const page = plainPage(shellWords.language, title, [{ say: says }, { say: next }]);
  response.writeHead(403, { ...page.headers, 'Cache-Control': 'no-store' }).end(page.body);
}

function sendFile(folder: string, request: IncomingMessage, pathname: string, response: ServerResponse): void {
  const reads = request.method === 'GET' || request.method === 'HEAD';
  const file = reads ? pageFile(folder, pathname) : undefined;
  if (!file) {
    plain(response, reads ? 404 : 405, shellWords.door['turned-away'][reads ? 'nothing' : 'method']);
    return;
  }
  response.writeHead(200, { 'Content-Type': file.type, 'Cache-Control': 'no-cache' });
  if (request.method === 'HEAD') response.end();
  else {
    createReadStream(file.path)
      .on('error', () => response.destroy())
      .pipe(response);
  }
}

function plain(response: ServerResponse, status: number, says: string): void {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' }).end(says);
}
