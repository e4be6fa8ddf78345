import { canonicalJson } from '../../core/journal/canonicalJson.ts';
import type { Json } from '../../core/journal/entry.ts';
import { type Personal, PURPOSES, type Purpose, type SealedText } from '../../core/journal/personal.ts';
import { isOneOf } from '../../core/table.ts';
import { isPackedBy, PACKED_BY, type PackedBy, pack, unpack } from '../packing/values.ts';
import { seal, unseal } from './cipher.ts';
import { readKeyId } from './keyId.ts';

/**
 * What stands in a stored body instead of a personal value, or of a text, which says itself that it is one. A long one
 * was packed before it was sealed, and says how.
 */
export type SealedField = {
  readonly sealed: string;
  readonly key: string;
  readonly as?: 'text';
  readonly packed?: PackedBy;
};

type Mark = Personal<unknown> | SealedText;

/** An owner and a purpose that need a key. */
export type KeyNeed = { readonly owner: string; readonly purpose: Purpose };

/** Whose keys a body needs, each once. */
export function keysNeeded(body: unknown): readonly KeyNeed[] {
  const found = new Map<string, KeyNeed>();
  change(body, '', (mark) => {
    found.set(`${mark.of}/${mark.personal}`, { owner: mark.of, purpose: mark.personal });
    return null;
  });
  return [...found.values()];
}

/**
 * The body as it is stored: every personal value sealed under its owner's key, bound to that key and to its place in
 * the body.
 * @param keyFor The key for an owner and purpose, already safe on the disk.
 * @throws {TypeError} When the body holds what is no JSON, or imitates a sealed field: a caller's defect.
 */
export function sealBody(
  body: unknown,
  keyFor: (owner: string, purpose: Purpose) => { readonly id: string; readonly key: Uint8Array },
): Json {
  return change(body, '', (mark, path) => {
    const { id, key } = keyFor(mark.of, mark.personal);
    const isText = 'text' in mark;
    const plain = Buffer.from(canonicalJson(isText ? mark.text : mark.value), 'utf8');
    const packed = pack(plain);
    const sealed = seal(key, packed ?? plain, aboutField(id, path, packed && PACKED_BY)).toString('base64url');
    return { sealed, key: id, ...(isText && { as: 'text' }), ...(packed && { packed: PACKED_BY }) };
  });
}

/**
 * A stored body, its personal values and texts opened again. One that its key does not open reads null, a text '': a
 * single damaged value must not take the rest of the shop with it. The whole check names it.
 * @param keyOf A key by name, null when it was destroyed: then the value reads null, a text ''.
 */
export function openBody(body: Json, keyOf: (id: string) => Uint8Array | null): unknown {
  return reopen(body, '', keyOf);
}

/** The sealed fields of a stored body, each with its place; `opens` tries one with its key. */
export function sealedFields(
  body: Json,
): readonly { readonly path: string; readonly key: string; readonly opens: (key: Uint8Array) => boolean }[] {
  const found: { path: string; key: string; opens: (key: Uint8Array) => boolean }[] = [];
  const walk = (value: Json, path: string): void => {
    if (typeof value !== 'object' || value === null) return;
    if (!Array.isArray(value) && isSealedField(value)) {
      const opens = (by: Uint8Array) => plainOf(value, path, by) !== null;
      found.push({ path, key: value.key, opens });
      return;
    }
    for (const [name, item] of Object.entries<Json>(value)) walk(item, step(path, name));
  };
  walk(body, '');
  return found;
}

/** The bytes that were sealed, unpacked; null when the key, the place or the bytes are others. */
function plainOf({ sealed, key, packed }: SealedField, path: string, by: Uint8Array): Buffer | null {
  const opened = unseal(by, Buffer.from(sealed, 'base64url'), aboutField(key, path, packed ?? null));
  return opened && packed ? unpack(opened, packed) : opened;
}

/** What a sealed field is bound to: its key, its place, and how it is packed. */
const aboutField = (key: string, path: string, packed: PackedBy | null) =>
  `${key}\n${path}${packed === null ? '' : `\n${packed}`}`;
const step = (path: string, name: string) => `${path}/${name.replaceAll('~', '~0').replaceAll('/', '~1')}`;

function change(value: unknown, path: string, onMark: (mark: Mark, path: string) => Json): Json {
  if (Array.isArray(value)) return value.map((item, index) => change(item, step(path, String(index)), onMark));
  if (value === null || typeof value === 'boolean' || typeof value === 'number' || typeof value === 'string')
    return value;
  if (typeof value !== 'object') throw new TypeError(`No JSON at ${path || '/'}: ${typeof value}`);
  if (isMark(value)) return onMark(value, path);
  if (isSealedField(value))
    throw new TypeError(`A body may not hold what looks like a sealed field (at ${path || '/'})`);
  const members = Object.entries(value).filter(([, item]) => item !== undefined);
  return Object.fromEntries(members.map(([name, item]) => [name, change(item, step(path, name), onMark)]));
}

function reopen(value: Json, path: string, keyOf: (id: string) => Uint8Array | null): unknown {
  if (Array.isArray(value)) return value.map((item, index) => reopen(item, step(path, String(index)), keyOf));
  if (typeof value !== 'object' || value === null) return value;
  if (isSealedField(value)) return reopenField(value, path, keyOf);
  return Object.fromEntries(
    Object.entries<Json>(value).map(([name, item]) => [name, reopen(item, step(path, name), keyOf)]),
  );
}

function reopenField(field: SealedField, path: string, keyOf: (id: string) => Uint8Array | null): unknown {
  const whose = readKeyId(field.key);
  if (!whose) throw new Error(`A sealed field names no key (at ${path || '/'})`);
  const key = keyOf(field.key);
  const plain = key && plainOf(field, path, key);
  // What it says was held against its kind's shape before it was sealed, and is again where its stream is folded.
  const value: unknown = plain && JSON.parse(plain.toString('utf8'));
  if (field.as === 'text') return typeof value === 'string' ? value : '';
  return { personal: whose.purpose, of: whose.owner, value };
}

function isMark(value: object): value is Mark {
  if (!('personal' in value && 'of' in value) || Object.keys(value).length !== 3) return false;
  if (!('value' in value || ('text' in value && typeof value.text === 'string'))) return false;
  return typeof value.of === 'string' && isOneOf(PURPOSES, value.personal);
}

function isSealedField(value: object): value is SealedField {
  return (
    'sealed' in value &&
    'key' in value &&
    Object.keys(value).length === 2 + Number(isTextMark(value)) + Number(isPackedMark(value)) &&
    typeof value.sealed === 'string' &&
    typeof value.key === 'string'
  );
}

const isTextMark = (value: object) => 'as' in value && value.as === 'text';
const isPackedMark = (value: object) => 'packed' in value && isPackedBy(value.packed);
