import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's root folder. */
export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** A path inside the project, given in parts. */
export const inHouse = (...parts) => join(root, ...parts);

/** What the build leaves behind and the launcher starts; `build.mjs` writes these. */
export const built = {
  folder: inHouse('dist'),
  main: inHouse('dist', 'main.cjs'),
  service: inHouse('dist', 'service.mjs'),
  screens: inHouse('dist', 'ui', 'index.html'),
};
