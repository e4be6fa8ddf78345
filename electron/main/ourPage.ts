/** Our page's own scheme: it exists in our windows only, and nothing else answers to it. */
export const SCHEME = 'app';
export const ORIGIN = `${SCHEME}://knowngood`;
export const OUR_PAGE = `${ORIGIN}/`;
export const CANNOT_START = `${ORIGIN}/cannot-start`;

/** Whether an address belongs to our own page: scheme and host, not merely the same beginning. */
export function isOurs(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { protocol, host } = new URL(address);
  return protocol === `${SCHEME}:` && host === 'knowngood';
}
