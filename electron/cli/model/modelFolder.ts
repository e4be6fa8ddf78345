import { existsSync } from 'node:fs';
import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { renameFiles } from '../../../core/tracing/live/renamed/renameFiles.ts';
import type { ModelFiles } from '../../../core/tracing/live/shop/modelFiles.ts';
import type { Io } from '../command.ts';

/** Writes a model's files into a folder that has none of them yet; says which one was there already. */
export async function writeModel(folder: string, files: ModelFiles): Promise<string | null> {
  const there = Object.keys(files).find((name) => existsSync(join(folder, name)));
  if (there !== undefined) return there;
  await mkdir(folder, { recursive: true });
  for (const [name, file] of Object.entries(files))
    await writeFile(join(folder, name), `${JSON.stringify(file, null, 2)}\n`);
  return null;
}

/** Reads every `.json` of a folder; one that is no JSON is named. */
export async function readModel(
  folder: string,
  io: Io,
): Promise<ModelFiles | { readonly wrong: string; readonly why: string }> {
  const files: { [name: string]: unknown } = {};
  let at = folder;
  try {
    for (const name of (await readdir(folder)).filter((one) => one.endsWith('.json'))) {
      at = join(folder, name);
      files[name] = JSON.parse(new TextDecoder().decode(await io.readFile(at)));
    }
  } catch (error) {
    return { wrong: at, why: error instanceof Error ? error.message : String(error) };
  }
  return renameFiles(files);
}
