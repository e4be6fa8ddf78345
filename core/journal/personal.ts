import { z } from 'zod';
/** Why a personal value is held. One key per owner and purpose, each with its own period. */
export const PURPOSES = ['contact', 'record', 'signature', 'photographs', 'secret', 'readings', 'staff'] as const;
export type Purpose = (typeof PURPOSES)[number];

/**
 * A personal value inside an entry's body. `core` marks it; `db` seals it under the key of (`of`, `personal`)
 * before the entry is chained, and opens it on reading. `value` is null once the key was destroyed.
 */
export type Personal<T> = {
  readonly personal: Purpose;
  /** Whose it is: an owner's id, or `shop` for the shop's own staff. */
  readonly of: string;
  readonly value: T | null;
};

/** Marks a value as personal. */
export const personal = <T>(purpose: Purpose, of: string, value: T): Personal<T> => ({ personal: purpose, of, value });

/** A text that rules and screens handle as plain text, and that is sealed like a personal value. */
export type SealedText = { readonly personal: Purpose; readonly of: string; readonly text: string };

/** Marks a text to be sealed: whatever its entry is called later, it opens to plain text, and to '' without its key. */
export const sealedText = (purpose: Purpose, of: string, text: string): SealedText => ({ personal: purpose, of, text });

/** A personal value as it stands in a body, opened: null once its key was destroyed. */
export const personalShape = <S extends z.ZodType>(value: S) =>
  z.strictObject({ personal: z.enum(PURPOSES), of: z.string(), value: value.nullable() });
