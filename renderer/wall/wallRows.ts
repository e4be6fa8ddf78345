import type { WallSheet } from '../../core/contract/screens.ts';
import type { Standing } from '../../core/custody/part.ts';
import type { SilhouetteName } from '../kit/mark/silhouettes.ts';
import type { OutPart, WallBin } from '../kit/wall/WallDrawing.tsx';
import type { Words } from '../kit/words.tsx';

type WallPart = WallSheet['parts'][number];
export type PlacedBin = WallBin & { readonly partId: string };

const SHAPES: Readonly<Record<string, SilhouetteName>> = {
  board: 'board',
  card: 'card',
  supply: 'supply',
  dimm: 'dimm',
  processor: 'processor',
  drive: 'drive',
  cooler: 'cooler',
  meter: 'meter',
  'plug-meter': 'meter',
  'load-tester': 'tester',
};
const IN_A_ROW = 4;

/** Bins as they hang: by name, several parts of one bin side by side. What is out leaves its shadow. */
export function wallRows(parts: readonly WallPart[], words: Words): readonly (readonly PlacedBin[])[] {
  const hung = parts
    .filter((part) => part.home?.at === 'bin')
    .map((part) => ({ part, bin: part.home?.at === 'bin' ? part.home.bin : '' }))
    .sort(
      (a, b) =>
        a.bin.localeCompare(b.bin, 'en', { numeric: true }) || (a.part.tag ?? '').localeCompare(b.part.tag ?? ''),
    );
  const bins = hung.map(({ part, bin }, at) =>
    placed(part, hung.filter((one, before) => before < at && one.bin === bin).length, bin, words),
  );
  return Array.from({ length: Math.ceil(bins.length / IN_A_ROW) }, (_, row) =>
    bins.slice(row * IN_A_ROW, (row + 1) * IN_A_ROW),
  );
}

function placed(part: WallPart, before: number, bin: string, words: Words): PlacedBin {
  const asks = part.standing.is === 'exposed' || part.standing.is === 'unproved' || part.overdue;
  return {
    id: before === 0 ? bin : `${bin}/${before + 1}`,
    partId: part.id,
    part: {
      tag: part.tag ?? '',
      what: part.name,
      shape: SHAPES[part.kind] ?? 'tester',
      out: part.place.at !== 'bin',
      dead: part.standing.is === 'dead',
      lines: [
        { text: standingWords(part.standing, words), bold: asks },
        {
          text:
            part.place.at === 'bin'
              ? part.reservedFor
                ? words.t('wall.held', { for: part.jobCalled ?? '' })
                : words.t('wall.free')
              : whereWords(part, words),
        },
      ],
    },
  };
}

/** How good a part is, and how far that was shown. */
export function standingWords(standing: Standing, { t, dayMonth }: Words): string {
  switch (standing.is) {
    case 'known-good':
      return t('wall.known-good', {
        where: standing.evidence.where,
        day: dayMonth(standing.evidence.at),
        by: standing.evidence.by,
      });
    case 'exposed':
      return t('wall.exposed');
    default:
      return t(`wall.${standing.is}`);
  }
}

/** Where a part is when it is not in its bin, and since when. */
export function whereWords(part: WallPart, { t, dayClock }: Words): string {
  const facts = { since: dayClock(part.since), called: part.jobCalled ?? '' };
  const { place } = part;
  if (place.at === 'slot')
    return t(part.title?.as === 'lent' ? 'wall.lent-in' : 'wall.trial-in', { ...facts, slot: place.slot });
  if (place.at === 'rig') return t('wall.in-rig', { ...facts, slot: place.slot });
  return t(`wall.at.${place.at}`, facts);
}

/** What is out, the longest first. */
export const outParts = (parts: readonly WallPart[], words: Words): readonly OutPart[] =>
  parts
    .filter((part) => part.home !== null && part.place.at !== 'bin')
    .sort((a, b) => a.since - b.since)
    .map((part) => ({
      tag: part.tag ?? '',
      what: part.name,
      where: whereWords(part, words),
      ...(part.overdue && { bold: words.t('wall.overdue') }),
    }));
