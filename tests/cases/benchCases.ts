import { readdirSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** A file of a bench case: its path below this folder, its name without the ending, and what stands in it. */
export type CaseFile = { readonly path: string; readonly name: string; readonly json: unknown };

const here = fileURLToPath(new URL('./', import.meta.url));

/** Every bench case of every folder beside this file, by path. */
export function benchCaseFiles(): readonly CaseFile[] {
  const folders = readdirSync(here).filter((name) => statSync(`${here}${name}`).isDirectory());
  return folders.sort().flatMap((folder) =>
    readdirSync(`${here}${folder}`)
      .sort()
      .map((name) => ({
        path: `${folder}/${name}`,
        name: name.replace(/\.json$/, ''),
        json: JSON.parse(readFileSync(`${here}${folder}/${name}`, 'utf8')),
      })),
  );
}
