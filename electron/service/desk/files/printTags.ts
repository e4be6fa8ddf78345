import type { Tag } from '../../../../core/custody/part.ts';
import { issueTag, type RandomInt } from '../../../../core/custody/tag.ts';
import type { ShopSettings } from '../../../../core/job/shop.ts';
import type { Setting } from '../../../../core/papers/setting.ts';
import type { TagStock } from '../../../../core/papers/sizes.ts';
import { printedTags } from '../../../../core/papers/tags/printedTags.ts';
import type { EpochMs } from '../../../../core/time.ts';
import { type Reader, tagsInUse } from '../../../../db/index.ts';
import { drawPaper } from '../../../papers/drawPaper.ts';
import { loadPaperFonts } from '../../../papers/fonts.ts';

/** Fresh tags, none of them ever bound in this shop or voided, and no two alike. */
export async function freshTags(
  inUse: (tags: readonly Tag[]) => Promise<ReadonlySet<Tag>>,
  count: number,
  randomInt: RandomInt,
): Promise<readonly Tag[]> {
  const fresh = new Set<Tag>();
  while (fresh.size < count) {
    const drawn = Array.from({ length: count - fresh.size }, () => issueTag(randomInt));
    const used = await inUse(drawn);
    for (const tag of drawn) if (!used.has(tag)) fresh.add(tag);
  }
  return [...fresh];
}

/** What is printed: fresh tags to be bound by their first scan, or these again. */
export type TagsAsked =
  | { readonly is: 'fresh'; readonly count: number }
  | { readonly is: 'these'; readonly tags: readonly Tag[] };

/** The tags asked for, as a PDF for the shop's roll or sheets. */
export async function printTags(
  read: Reader,
  asked: TagsAsked,
  given: {
    readonly settings: ShopSettings;
    readonly setting: Setting;
    readonly randomInt: RandomInt;
    readonly at: EpochMs;
  },
): Promise<Uint8Array<ArrayBuffer>> {
  const tags =
    asked.is === 'these' ? asked.tags : await freshTags((some) => tagsInUse(read, some), asked.count, given.randomInt);
  return drawTags(
    {
      tags,
      stock: given.settings.tagsOn ?? { on: given.settings.paperSize },
      shopName: given.settings.name,
      at: given.at,
    },
    given.setting,
  );
}

/** Draws tags with nothing but code and text. */
export function drawTags(
  what: { readonly tags: readonly Tag[]; readonly stock: TagStock; readonly shopName: string; readonly at: EpochMs },
  setting: Setting,
): Promise<Uint8Array<ArrayBuffer>> {
  const { tags, stock, shopName, at } = what;
  return drawPaper(printedTags({ tags, stock, shopName, issuedAt: at, headShort: '' }, setting), loadPaperFonts());
}
