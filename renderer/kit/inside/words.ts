import type { Tag } from '../../../core/custody/part.ts';
import { formatTag } from '../../../core/custody/tag.ts';
import type { Words } from '../text/words.tsx';
import type { InsidePart, InsideSlot } from './model.ts';

export type CallOutLine = { readonly text: string; readonly tone: 'head' | 'plain' | 'muted' | 'ours' };

const tagOf = (tag: Tag | null) => (tag === null ? '' : formatTag(tag));

/** What it is; whose and where; what is known of it. At most three lines. */
export function partLines(part: InsidePart, out: boolean, { t }: Words): readonly CallOutLine[] {
  const lines: CallOutLine[] = [{ text: part.what, tone: 'head' }];
  const standing = part.standing === 'plain' ? null : t(`kit.mark.${part.standing}`);
  const where = part.where ?? standing ?? t(part.known ? 'kit.inside.in-place' : 'kit.inside.not-seen');
  const both = part.where !== undefined && standing !== null ? `${where}, ${standing}` : where;
  if (part.whose === 'shop') {
    lines.push({ text: `${t('kit.mark.shop')}  ${tagOf(part.tag)}`.trim(), tone: 'ours' });
    const note = [standing, part.note].filter((text) => text !== null && text !== undefined).join(', ');
    if (note !== '') lines.push({ text: note, tone: 'plain' });
    return lines;
  }
  lines.push({ text: t(out ? 'kit.inside.owner-out' : 'kit.inside.owner', { where: both }), tone: 'plain' });
  if (part.note !== undefined) lines.push({ text: part.note, tone: 'muted' });
  return lines;
}

/** The lines of a slot: what is in it, what is missing from it, or that it is empty or not seen. */
export function slotLines(one: InsideSlot, words: Words): readonly CallOutLine[] {
  if (one.holds) return partLines(one.holds, false, words);
  if (one.away) return partLines(one.away, true, words);
  const { t } = words;
  const name = slotName(one, words);
  if (!one.seen) {
    return [
      { text: t('kit.inside.unknown', { what: name }), tone: 'head' },
      { text: t('kit.inside.look-or-leave'), tone: 'muted' },
    ];
  }
  return [
    { text: name, tone: 'head' },
    { text: t('kit.inside.empty'), tone: 'muted' },
  ];
}

/** What a slot is called: its printed name, or its kind where nothing is known of it. */
export function slotName(one: InsideSlot, { t }: Words): string {
  const kind = t(`kit.kind.${one.slot.takes}`);
  if (one.slot.id.startsWith('?')) return kind;
  return one.slot.id.toLowerCase() === one.slot.takes ? kind : t('kit.inside.slot-name', { id: one.slot.id, kind });
}

/** One sentence of a slot for a screen reader. */
export function slotSaid(one: InsideSlot, words: Words): string {
  return `${slotName(one, words)}: ${slotLines(one, words)
    .map((line) => line.text)
    .join(', ')}`;
}

/** Whether it is worth a call-out where there is little room: anything but the owner's own, plain, in its place (what is not known says so inside). */
export function differs(one: InsideSlot): boolean {
  if (one.away && !one.holds) return true;
  const part = one.holds;
  if (part === null) return false;
  return part.whose === 'shop' || part.standing !== 'plain' || part.unplugged === true;
}
