import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { runTool } from '../../electron/launch/runTool.mjs';

/** Debian packages the tests use, with a file that shows each is there. */
const PACKAGES = [
  { name: 'chromium', shows: ['chromium'], for: 'journeys in a browser' },
  { name: 'xvfb', shows: ['Xvfb'], for: 'journeys without a display' },
  { name: 'xauth', shows: ['xauth'], for: 'journeys without a display' },
  { name: 'qpdf', shows: ['qpdf'], for: 'checks of the papers' },
  { name: 'poppler-utils', shows: ['pdftotext', 'pdfinfo', 'pdftoppm'], for: 'checks of the papers' },
  { name: 'strace', shows: ['strace'], for: 'faults at single calls to the disk' },
  { name: 'zbar-tools', shows: ['zbarimg'], for: 'reading printed codes back' },
  { name: 'unzip', shows: ['unzip'], for: 'the Electron for tests' },
  { name: 'libgtk-3-0', shows: ['libgtk-3.so.0'], for: 'the Electron for tests' },
  { name: 'libnss3', shows: ['libnss3.so'], for: 'the Electron for tests' },
  { name: 'libasound2', shows: ['libasound.so.2'], for: 'the Electron for tests' },
  { name: 'libgbm1', shows: ['libgbm.so.1'], for: 'the Electron for tests' },
  { name: 'libxss1', shows: ['libXss.so.1'], for: 'the Electron for tests' },
];

const FOLDERS = [
  ...(process.env.PATH ?? '').split(delimiter).filter(Boolean),
  '/usr/lib/x86_64-linux-gnu',
  '/usr/lib/aarch64-linux-gnu',
  '/usr/lib',
];
const isThere = (file) => FOLDERS.some((folder) => existsSync(join(folder, file)));

/** Packages whose programs or libraries are not here. */
const lacking = () => PACKAGES.filter(({ shows }) => !shows.every(isThere));

/** Whether a program can be started by its name. */
export const hasProgram = (name) => isThere(name);

/**
 * Installs what is lacking, on Debian and as root.
 * @returns sentences about what is still lacking and what is skipped for it; none when all is there.
 */
export async function ensureDebianPackages(say, limitMs) {
  if (process.platform !== 'linux') {
    return ['Not on Linux: the checks that need Debian’s programs are skipped where a program is not found.'];
  }
  if (lacking().length > 0 && existsSync('/etc/debian_version') && process.getuid?.() === 0) {
    const names = lacking().map(({ name }) => name);
    say(`Installing ${names.join(', ')} (apt-get) …`);
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    const apt = (...args) =>
      runTool('apt-get', ['-qq', '-o', 'DPkg::Lock::Timeout=120', ...args], {
        env,
        stdio: ['ignore', 'ignore', 'ignore'],
        limitMs,
      });
    await apt('update');
    await apt('install', '-y', '--no-install-recommends', ...names);
  }
  return lacking().map(
    ({ name, for: purpose }) => `Not here and not to be had: ${name}. Skipped without it: ${purpose}.`,
  );
}
