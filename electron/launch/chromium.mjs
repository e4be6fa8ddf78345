import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const ON_PATH = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];
const ELSEWHERE = {
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [
    join(process.env.ProgramFiles ?? '', 'Google', 'Chrome', 'Application', 'chrome.exe'),
    join(process.env['ProgramFiles(x86)'] ?? '', 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
  ],
};

/** A browser of the Chromium family, the only one that opens a page as a window of its own; else `undefined`. */
export function chromiumBinary(env = process.env, platform = process.platform) {
  const folders = platform === 'win32' ? [] : (env.PATH ?? '').split(delimiter).filter(Boolean);
  const onPath = ON_PATH.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...onPath, ...(ELSEWHERE[platform] ?? [])].find((path) => existsSync(path));
}
