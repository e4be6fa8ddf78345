import type { ShopSettings, Staff } from '../../../core/job/shop.ts';
import type { People } from '../../../core/people/people.ts';
import type { Reader } from '../../../db/index.ts';

/** What says who may come in: the shop's settings and people, and their ways in. */
export type Inside = {
  readonly settings: ShopSettings | null;
  readonly staff: readonly Staff[];
  readonly people: People;
};

/** What it is read from. */
export type LooksIn = Pick<Reader, 'load' | 'loadReadable'>;

/**
 * Loads it, and remembers that it was looked at. Where an entry of the people cannot be read, PINs are taken to be used: it
 * may have been the one that set the first.
 */
export async function lookIn(read: LooksIn): Promise<Inside> {
  const { settings, staff } = await read.load('shop');
  const { state, unreadable } = await read.loadReadable('people');
  const use = unreadable.length > 0 && state.use === 'none-yet' ? 'on' : state.use;
  return { settings, staff, people: { ...state, use } };
}
