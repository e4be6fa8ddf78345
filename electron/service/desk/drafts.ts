import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';
import { isBlobName, type Shop } from '../../../db/index.ts';

/** What was typed and not yet written for good. The text lies sealed among the blobs; unnamed there, it is swept after a day. */
export type Drafts = {
  readonly save: (key: string, text: string | null) => Promise<void>;
  readonly load: (key: string) => Promise<string | null>;
  /** Sealed files that drafts stand in: they are named by no entry. */
  readonly files: () => readonly string[];
};

/** Keeps drafts of a shop; `path` holds which sealed file belongs to which sheet, and no text. */
export function openDrafts(shop: Shop, path: string): Drafts {
  const names = new Map<string, string>(read(path));
  const write = () => {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(`${path}.new`, JSON.stringify([...names]), { mode: 0o600 });
    renameSync(`${path}.new`, path);
  };
  return {
    save: async (key, text) => {
      if (text === null) names.delete(key);
      else {
        const stored = await shop.blobs.put(new TextEncoder().encode(text), { of: 'drafts', purpose: 'record' });
        if (typeof stored === 'string') names.set(key, stored);
      }
      write();
    },
    files: () => [...names.values()],
    load: async (key) => {
      const name = names.get(key);
      if (name === undefined || !isBlobName(name)) return null;
      const bytes = await shop.blobs.get(name);
      return bytes instanceof Uint8Array ? new TextDecoder().decode(bytes) : null;
    },
  };
}

const zKept = z.array(z.tuple([z.string(), z.string()]));

function read(path: string): readonly (readonly [string, string])[] {
  try {
    return zKept.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    // None yet, or not readable: a lost draft list must not keep the shop from opening.
    return [];
  }
}
