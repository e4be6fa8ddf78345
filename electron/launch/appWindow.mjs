import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { startTool } from './runTool.mjs';

const escaped = (text) => text.replace(/[&<>"']/g, (sign) => `&#${sign.codePointAt(0)};`);

/**
 * Opens an address as a browser window of its own, with a profile that is thrown away when the window is closed. Every
 * account of the computer can read a program's arguments, so the address, which lets in whoever comes first, stands in a
 * page that only this account can read, and the browser is given that page.
 *
 * @returns the code with which the browser ended.
 */
export async function appWindow(browser, address, { env, args = [] }) {
  // Of mode 700.
  const profile = mkdtempSync(join(tmpdir(), 'knowngood-window-'));
  const page = join(profile, 'open.html');
  const leads = `<!doctype html><meta charset="utf-8"><meta http-equiv="refresh" content="0;url=${escaped(address)}">`;
  writeFileSync(page, leads, { mode: 0o600 });
  const own = [
    `--app=${pathToFileURL(page)}`,
    `--user-data-dir=${profile}`,
    '--no-first-run',
    '--no-default-browser-check',
  ];
  const { ended } = startTool(browser, [...own, ...args], { env, stdio: 'ignore' });
  const { code } = await ended;
  rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  return code;
}
