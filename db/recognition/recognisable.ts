import type { Reach } from '../../core/approval/owner.ts';
import type { Entry } from '../../core/journal/entry.ts';
import type { Personal } from '../../core/journal/personal.ts';
import { keyedDigest } from '../seal/shopKeys.ts';
import { normalForm, type RecognitionKind } from './normal.ts';

/** A personal value by which its owner, machine or part can be found again; the key is what it is sealed under. */
export type Recognisable = { readonly kind: RecognitionKind; readonly text: string; readonly key: string };

/** The digest that stands for a value: HMAC under the shop's search key. Null when the value is too short to recognise by. */
export function recognitionDigest(searchKey: Uint8Array, kind: RecognitionKind, text: string): Buffer | null {
  const form = normalForm(kind, text);
  return form === null ? null : keyedDigest(searchKey, [kind, form]);
}

type SealedBody = { readonly [field: string]: unknown };

/**
 * What an entry can be recognised by.
 * @param opened Body with its personal values open.
 * @param sealed The same body as stored, for the names of the keys.
 */
export function recognisableIn(
  entry: Pick<Entry, 'kind'>,
  opened: SealedBody,
  sealed: SealedBody,
): readonly Recognisable[] {
  const under = (field: string) => (sealed[field] as { readonly key?: string } | null | undefined)?.key ?? null;
  if (entry.kind === 'owner-known' || entry.kind === 'owner-changed') {
    const key = under('reach');
    const reach = (opened.reach as Personal<Reach> | undefined)?.value;
    if (!key || !reach) return [];
    const ways = [
      { kind: 'phone', text: reach.phone },
      { kind: 'mail', text: reach.mail },
    ] as const;
    return ways.flatMap(({ kind, text }) => (text === null ? [] : [{ kind, text, key }]));
  }
  if (entry.kind === 'machine-known' || entry.kind === 'part-known') {
    const key = under('serial');
    const serial = (opened.serial as Personal<string> | null | undefined)?.value;
    return key && serial ? [{ kind: 'serial', text: serial, key }] : [];
  }
  return [];
}
