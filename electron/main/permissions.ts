import type { Session } from 'electron';
import { isOurs } from './ourPage.ts';

const ELSEWHERE = ['http', 'https', 'ws', 'wss', 'ftp', 'file'].map((scheme) => `${scheme}://*/*`);

/**
 * Our own page may use the camera's picture, for photographs of machines; nothing else is allowed to anyone.
 * Requests to anywhere but our own scheme are cut off as well: no content comes from elsewhere.
 */
export function grantOnlyTheCamera(session: Session): void {
  session.setPermissionRequestHandler((_page, permission, answer, details) => {
    const kinds = 'mediaTypes' in details ? (details.mediaTypes ?? []) : [];
    const onlyPicture = kinds.length > 0 && kinds.every((kind) => kind === 'video');
    answer(permission === 'media' && onlyPicture && isOurs(details.requestingUrl));
  });
  session.setPermissionCheckHandler(
    (_page, permission, origin, details) => permission === 'media' && details.mediaType === 'video' && isOurs(origin),
  );
  session.setDevicePermissionHandler(() => false);
  session.setSpellCheckerEnabled(false);
  session.webRequest.onBeforeRequest({ urls: ELSEWHERE }, (_request, answer) => answer({ cancel: true }));
}
