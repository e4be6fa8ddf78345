import type { Tag } from '../../core/custody/part.ts';
import { parseTag } from '../../core/custody/tag.ts';

/** A tag by its letters. @throws {Error} Where its check character is wrong: the test means another one. */
export function aTag(text: string): Tag {
  const tag = parseTag(text);
  if (!tag) throw new Error(`no tag: ${text}`);
  return tag;
}
