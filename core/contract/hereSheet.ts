import type { StaffId } from '../ids.ts';
import type { PinUse } from '../people/people.ts';
import type { Role } from '../people/roles.ts';
import type { Minutes } from '../time.ts';

/** One of the shop as a screen may show them before anybody is in: never a hash, never a PIN's length. */
export type OfTheShop = {
  readonly id: StaffId;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly hasPin: boolean;
  /** The tag of their badge. */
  readonly badge: string | null;
};

/** Who is at this screen, and how the next one gets in. */
export type HereSheet = {
  readonly use: PinUse;
  /** Who came in last; null: nobody yet. */
  readonly who: StaffId | null;
  readonly locked: boolean;
  readonly people: readonly OfTheShop[];
  readonly lockAfter: Minutes;
  /** Recovery words were made. */
  readonly hasWords: boolean;
};

/** Recovery words, to be shown this once: the service keeps their hash alone. */
export type WordsOnce = { readonly words: readonly string[] };
