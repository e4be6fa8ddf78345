import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The built page: beside the built service, or in `dist` when the service runs from its sources. */
export function screensFolder(): string {
  const here = dirname(fileURLToPath(import.meta.url));
  const beside = join(here, 'ui');
  return existsSync(beside) ? beside : join(here, '..', '..', 'dist', 'ui');
}
