import type { Refusal } from '../refusal.ts';

/** A PIN is digits alone, so many at least and at most. */
export const PIN_DIGITS = { least: 4, most: 12 } as const;

const SECOND = 1000;
/** The waits after the first, second and third wrong PIN in a row, and after each one more. */
const WAITS_MS = [1 * SECOND, 5 * SECOND, 30 * SECOND] as const;
const LONGEST_MS = 300 * SECOND;

/** Why these characters cannot be a PIN: `pin-not-digits`, `pin-too-short`, `pin-too-long`; null where they can. */
export function pinProblem(pin: string): Refusal | null {
  if (!/^[0-9]*$/.test(pin)) return { refused: 'pin-not-digits', ...PIN_DIGITS };
  if (pin.length < PIN_DIGITS.least) return { refused: 'pin-too-short', ...PIN_DIGITS };
  if (pin.length > PIN_DIGITS.most) return { refused: 'pin-too-long', ...PIN_DIGITS };
  return null;
}

/** Milliseconds to wait after so many wrong PINs in a row: 1, 5, 30 seconds, then 5 minutes each; never for ever. */
export const waitAfter = (missed: number): number => (missed <= 0 ? 0 : (WAITS_MS[missed - 1] ?? LONGEST_MS));
