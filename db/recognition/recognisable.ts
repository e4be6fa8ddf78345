import type { AnyEntry } from '../../core/entries/subjects.ts';
import type { Json } from '../../core/journal/entry.ts';
import { sealedFields } from '../seal/sealedBody.ts';
import { keyedDigest } from '../seal/shopKeys.ts';
import { normalForm, type RecognitionKind } from './normal.ts';

/** A personal value by which its owner, machine or part can be found again; the key is what it is sealed under. */
export type Recognisable = { readonly kind: RecognitionKind; readonly text: string; readonly key: string };

/** The digest that stands for a value: HMAC under the shop's search key. Null when the value is too short to recognise by. */
export function recognitionDigest(searchKey: Uint8Array, kind: RecognitionKind, text: string): Buffer | null {
  const form = normalForm(kind, text);
  return form === null ? null : keyedDigest(searchKey, [kind, form]);
}

/** Kinds of entries that hold such a value. */
export const RECOGNISABLE: ReadonlySet<string> = new Set([
  'owner-known',
  'owner-changed',
  'machine-known',
  'part-known',
]);

/**
 * What an entry can be recognised by.
 * @param opened The entry with its personal values open.
 * @param sealed Its body as stored, for the names of the keys.
 */
export function recognisableIn(opened: AnyEntry, sealed: Json): readonly Recognisable[] {
  const under = (field: string) => sealedFields(sealed).find(({ path }) => path === `/${field}`)?.key ?? null;
  switch (opened.kind) {
    case 'owner-known':
    case 'owner-changed': {
      const key = under('reach');
      const reach = opened.body.reach?.value;
      if (!key || !reach) return [];
      const ways = [
        { kind: 'phone', text: reach.phone },
        { kind: 'mail', text: reach.mail },
      ] as const;
      return ways.flatMap(({ kind, text }) => (text === null ? [] : [{ kind, text, key }]));
    }
    case 'machine-known':
    case 'part-known': {
      const key = under('serial');
      const serial = opened.body.serial?.value;
      return key && serial ? [{ kind: 'serial', text: serial, key }] : [];
    }
    default:
      return [];
  }
}
