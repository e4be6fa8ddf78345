import { randomUUID } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';
import type { Refusal } from '../../../core/refusal.ts';
import { isBlobName, type OpenShop, refusalFromError } from '../../../db/index.ts';

/**
 * What was typed and not yet written for good. The text lies sealed among the files, under a key of the sheet's own; what
 * stood there before, and all of it once the sheet is written or thrown away, is gone at once, key and all.
 */
export type Drafts = {
  /** Keeps a sheet's text, or lets it go (null). @returns Why it is not kept; null when it is. */
  readonly save: (key: string, text: string | null) => Promise<Refusal | null>;
  readonly load: (key: string) => Promise<string | null>;
  /** Sealed files that drafts stand in, and those that they name: no entry names them yet. */
  readonly files: () => readonly string[];
};

/** `of`: under whose key it lies, the sheet's own; null for one from before sheets had keys of their own. */
type Kept = { readonly file: string; readonly held: readonly string[]; readonly of: `draft:${string}` | null };

/** Keeps drafts of a shop; `path` holds which sealed files belong to which sheet, and no text. */
export function openDrafts(shop: Pick<OpenShop, 'blobs'>, path: string): Drafts {
  let kept: ReadonlyMap<string, Kept> = new Map(read(path));
  const write = (next: ReadonlyMap<string, Kept>): Refusal | null => {
    try {
      mkdirSync(dirname(path), { recursive: true });
      const rows = [...next].map(([key, { file, held, of }]) => [key, file, held, of]);
      writeFileSync(`${path}.new`, JSON.stringify(rows), { mode: 0o600 });
      renameSync(`${path}.new`, path);
      kept = next;
      return null;
    } catch (error) {
      const refusal = refusalFromError(error, path);
      if (!refusal) throw error;
      return refusal;
    }
  };
  const drop = (file: string | undefined) => {
    if (file !== undefined && isBlobName(file)) shop.blobs.drop(file);
  };
  return {
    save: async (key, text) => {
      const of = kept.get(key)?.of ?? (`draft:${randomUUID()}` as const);
      const stored =
        text === null ? null : await shop.blobs.put(new TextEncoder().encode(text), { of, purpose: 'record' });
      if (stored !== null && typeof stored !== 'string') return stored;
      // Looked up after the file was stored: another save of this sheet may have come in between.
      const { file: before, of: wasOf } = kept.get(key) ?? {};
      const others = new Map(kept);
      others.delete(key);
      const next = stored === null ? others : others.set(key, { file: stored, held: namedIn(text ?? ''), of });
      const refusal = write(next);
      drop(refusal ? (stored ?? undefined) : before);
      if (!refusal && wasOf && wasOf !== next.get(key)?.of) await shop.blobs.forget(wasOf);
      return refusal;
    },
    files: () => [...kept.values()].flatMap(({ file, held }) => [file, ...held]),
    load: async (key) => {
      const name = kept.get(key)?.file;
      if (name === undefined || !isBlobName(name)) return null;
      const bytes = await shop.blobs.get(name);
      return bytes instanceof Uint8Array ? new TextDecoder().decode(bytes) : null;
    },
  };
}

/** Photographs that a sheet holds already: they wait with it. */
const namedIn = (text: string): readonly string[] => text.match(/blob:[0-9a-f]{64}/g) ?? [];

/** Before sheets held photographs there were two in a row. */
const zKept = z.array(
  z
    .tuple([
      z.string(),
      z.string(),
      z.array(z.string()).optional(),
      z.templateLiteral(['draft:', z.string()]).nullish(),
    ])
    .transform(([key, file, held, of]): readonly [string, Kept] => [key, { file, held: held ?? [], of: of ?? null }]),
);

function read(path: string): readonly (readonly [string, Kept])[] {
  try {
    return zKept.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    // None yet, or not readable: a lost draft list must not keep the shop from opening.
    return [];
  }
}
