import type { OutRow } from '../../core/contract/custodySheets.ts';
import type { WallSheet } from '../../core/contract/screens.ts';
import { placeFacts } from '../../core/custody/readouts/placeFacts.ts';
import type { SilhouetteName } from '../kit/mark/silhouettes.ts';
import type { OutPart, WallBin } from '../kit/mark/WallDrawing.tsx';
import type { Words } from '../kit/text/words.tsx';

export type WallPart = WallSheet['parts'][number];
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
        a.bin.localeCompare(b.bin, words.locale, { numeric: true }) ||
        (a.part.tag ?? '').localeCompare(b.part.tag ?? '', words.locale),
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
      tag: part.tag,
      what: part.name,
      shape: SHAPES[part.kind] ?? 'tester',
      out: part.place.at !== 'bin',
      dead: part.standing.is === 'dead',
      lines: [
        { text: standingWords(part, words), bold: asks },
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

/** How good a part is, and how far that was shown: where, on which day, by whom, each once. */
export function standingWords({ standing, proof }: WallPart, { t, dayMonth }: Words): string {
  if (standing.is === 'unproved' && standing.why === 'lapsed') return t('wall.lapsed');
  if (standing.is !== 'known-good') return t(`wall.${standing.is}`);
  const day = dayMonth(standing.evidence.at);
  const { where } = standing.evidence;
  return t(where.includes(day) ? 'wall.known-good-where' : 'wall.known-good', {
    where,
    day,
    by: proof?.by ?? standing.evidence.by,
  });
}

/** Where a part is, and since when where that is not its bin. */
export function whereWords(part: WallPart, { t, dayClock, dayMonth }: Words): string {
  const { place, title } = part;
  const since = dayClock(part.since);
  if (place.at === 'bin') return t('wall.in-bin', { bin: place.bin });
  if (title?.as === 'lent')
    return t('wall.lent', { called: part.jobCalled ?? '', since, day: dayMonth(title.returnBy) });
  if (place.at === 'slot') return t('wall.trial-in', { called: part.jobCalled ?? '', slot: place.slot, since });
  if (place.at === 'rig') return t('wall.in-rig', { since, slot: place.slot });
  return t(`wall.at.${place.at}`, { since });
}

/** What is out, as the list beside the wall says it: where, with whom, since when, put there by whom. */
export const outParts = (rows: readonly OutRow[], { t, dayClock, dayMonth }: Words): readonly OutPart[] =>
  rows.map((row) => {
    const { says, facts } = placeFacts(row.is, row.holder);
    const place = t(`wall.is.${says}`, facts);
    const where = row.called === null ? place : `${place}, ${t('wall.for', { called: row.called })}`;
    return {
      tag: row.tag,
      what: row.name,
      where: t(row.returnBy === null ? 'wall.out-since' : 'wall.out-until', {
        where,
        since: dayClock(row.since),
        by: row.by,
        day: row.returnBy === null ? '' : dayMonth(row.returnBy),
      }),
      ...(row.overdue && { bold: t('wall.overdue') }),
    };
  });
