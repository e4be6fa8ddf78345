import { ORPCError } from '@orpc/client';

/** Where a text stands that no entry may hold, and what it holds. */
export type BadText = { readonly path: readonly (string | number)[]; readonly holds: 'U+0000' | 'lone surrogate' };

/** A value on the way through the input; linked to where it lies, so that depth costs no copying of paths. */
type Spot = { readonly at: unknown; readonly step: string | number; readonly within: Spot | undefined };

/**
 * The first text in a value, however deep, that holds U+0000 or a surrogate without its partner; keys count as texts.
 * Both would be stored in one shape and read back in another (SQLite ends text at U+0000; UTF-8 has no lone surrogate).
 * Bytes (files, blobs) are not looked into, a file's name is. Walks without recursion: depth is the asker's to choose.
 */
export function findBadText(value: unknown): BadText | undefined {
  const open: Spot[] = [{ at: value, step: '', within: undefined }];
  for (let spot = open.pop(); spot; spot = open.pop()) {
    const { at, step } = spot;
    const holds = badIn(step) ?? badIn(at);
    if (holds) return { path: pathOf(spot), holds };
    if (typeof at !== 'object' || at === null) continue;
    for (const [inner, held] of inside(at).reverse()) open.push({ at: held, step: inner, within: spot });
  }
  return undefined;
}

/** A bad key must not come back in the refusal: it is named by a well-formed likeness. */
function pathOf(spot: Spot): BadText['path'] {
  const path: (string | number)[] = [];
  for (let at = spot; at.within; at = at.within) {
    path.push(typeof at.step === 'string' ? at.step.replaceAll('\0', '\u2400').toWellFormed() : at.step);
  }
  return path.reverse();
}

function badIn(text: unknown): BadText['holds'] | undefined {
  if (typeof text !== 'string') return undefined;
  if (text.includes('\0')) return 'U+0000';
  return text.isWellFormed() ? undefined : 'lone surrogate';
}

function inside(value: object): [string | number, unknown][] {
  if (Array.isArray(value)) return value.map((inner, index) => [index, inner]);
  if (value instanceof Map) return [...value].map(([key, inner], index) => [index, [key, inner]]);
  if (value instanceof Set) return [...value].map((inner, index) => [index, inner]);
  if (value instanceof Blob) return 'name' in value ? [['name', value.name]] : [];
  return Object.entries(value);
}

/**
 * Stands before every handler at both doors and refuses such input as BAD_REQUEST, in the same shape
 * in which a field that breaks the contract is refused: `data.issues[{ path, message }]`.
 */
export function refuseBadText<Answer>(call: { readonly input: unknown; next(): Answer }): Answer {
  const bad = findBadText(call.input);
  if (!bad) return call.next();
  throw new ORPCError('BAD_REQUEST', {
    message: 'Input validation failed',
    data: { issues: [{ path: bad.path, message: `holds ${bad.holds}` }] },
  });
}
