import type { OfTheShop } from '../../core/contract/hereSheet.ts';
import { parseTag } from '../../core/custody/tag.ts';

/** Whose badge it is; undefined for a tag of anything else. */
export const ofBadge = (people: readonly OfTheShop[], code: string): OfTheShop | undefined =>
  people.find(({ badge }) => badge !== null && badge === parseTag(code));
