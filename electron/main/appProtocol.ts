import { readFile } from 'node:fs/promises';
import { protocol } from 'electron';
import { SECURITY_HEADERS } from '../page/contentPolicy.ts';
import { pageFile } from '../page/pageFile.ts';
import { CANNOT_START, isOurs, SCHEME } from './ourPage.ts';

/** Must be called before the app is ready. */
export function announceScheme(): void {
  const privileges = { standard: true, secure: true, supportFetchAPI: true, codeCache: true };
  protocol.registerSchemesAsPrivileged([{ scheme: SCHEME, privileges }]);
}

/**
 * Answers our page's requests from the built page's folder, and with nothing else.
 * @param failure The page that stands for the real one when the shop cannot be opened.
 */
export function serveScreens(folder: string, failure: () => Response): void {
  protocol.handle(SCHEME, async (request) => {
    if (request.method !== 'GET' || !isOurs(request.url)) return refused(405);
    if (request.url === CANNOT_START) return failure();
    const file = pageFile(folder, new URL(request.url).pathname);
    if (!file) return refused(404);
    return new Response(await readFile(file.path), { headers: { ...SECURITY_HEADERS, 'Content-Type': file.type } });
  });
}

function refused(status: number): Response {
  return new Response(null, { status, headers: SECURITY_HEADERS });
}
