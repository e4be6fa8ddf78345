import type { Tag } from '../../custody/part.ts';
import type { EpochMs } from '../../time.ts';
import type { Labels } from '../content.ts';
import { formatFor, groupTag } from '../format.ts';
import type { Setting } from '../setting.ts';
import { tagCode } from '../sheet.ts';
import type { TagStock } from '../sizes.ts';
import { tagGrid, tagSize } from './stock.ts';

export type PrintedTagsFacts = {
  readonly tags: readonly Tag[];
  readonly stock: TagStock;
  readonly shopName: string;
  readonly issuedAt: EpochMs;
  readonly headShort: string;
};

/** Tags with nothing but code and text, to be bound by their first scan: no owner, machine or part stands on them. */
export function printedTags(
  { tags, stock, shopName, issuedAt, headShort }: PrintedTagsFacts,
  setting: Setting,
): Labels {
  const format = formatFor(setting);
  const words = setting.words.kinds['part-tag'];
  const grid = tagGrid(stock);
  return {
    shape: 'labels',
    kind: 'part-tag',
    number: format.say(words.count, { n: tags.length }),
    language: setting.locale,
    title: words.printed,
    issuedAt,
    headShort,
    contentHash: null,
    shopName,
    size: tagSize(stock),
    ...(grid && { grid, note: words.hang }),
    labels: tags.map((tag) => ({ qr: tagCode(tag, format, setting), tag: groupTag(tag), mark: null, lines: [] })),
  };
}
