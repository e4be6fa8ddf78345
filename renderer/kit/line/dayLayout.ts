import type { Tag } from '../../../core/custody/part.ts';
import type { DayScale } from './dayScale.ts';

/** Whose move it is. */
export const BANDS = ['ours', 'owners', 'suppliers', 'ready'] as const;
export type BandName = (typeof BANDS)[number];

export type DayJob = {
  readonly id: string;
  /** What the shop calls it. */
  readonly name: string;
  /** One muted line: "tracing, supply is next". */
  readonly second: string;
  readonly band: BandName;
  /** ms; null when nothing is promised yet. */
  readonly promised: number | null;
  /** Nine in ten end by then, when that is past the promise; else null. */
  readonly ninety: number | null;
};
/** A loaner that one job waits for and another has. */
export type LaidThread = {
  readonly waits: string;
  readonly has: string;
  /** Of the loaner; null where it bears none. */
  readonly tag: Tag | null;
  readonly what: string;
  readonly says: string;
};

export type LaidPoint = {
  /** One job, or several of one far day gathered. */
  readonly jobs: readonly DayJob[];
  readonly x: number;
  readonly y: number;
  /** px of the bar at the end of the dots. */
  readonly bar: number | null;
  readonly label: { readonly x: number; readonly anchor: 'start' | 'end' };
};
export type DayBand = {
  readonly band: BandName;
  readonly top: number;
  readonly height: number;
  readonly points: readonly LaidPoint[];
  readonly jobs: number;
};
export type PlacedThread = {
  readonly thread: LaidThread;
  readonly path: string;
  readonly plate: { readonly x: number; readonly y: number; readonly width: number };
};
export type DayLayout = {
  readonly bands: readonly DayBand[];
  readonly threads: readonly PlacedThread[];
  readonly height: number;
};

const LANE = 54;
const LEAST = 80;
const FIRST = 34;

export type DayRoom = {
  /** px: the left end of all points ("before today" begins here), and the right edge. */
  readonly left: number;
  readonly right: number;
  readonly nowX: number;
  /** px of a job's label, the wider of its two lines. */
  readonly widthOf: (jobs: readonly DayJob[]) => number;
  readonly plateWidth: (thread: LaidThread) => number;
  /** Lanes a band may grow to before far days are gathered. */
  readonly lanes: number;
};

/**
 * Bands as high as their contents need, at least 80 px, labels that never cross. Points never move from their moment;
 * where a band would grow past its lanes, the jobs of its furthest days are gathered into one point a day; today's never.
 */
export function dayLayout(
  jobs: readonly DayJob[],
  threads: readonly LaidThread[],
  scale: DayScale,
  room: DayRoom,
): DayLayout {
  let top = 0;
  const bands = BANDS.map((band): DayBand => {
    const own = jobs.filter((job) => job.band === band);
    const here = threads.filter((thread) => own.some((job) => job.id === thread.waits));
    const ends = here.map((thread) =>
      own.find((job) => job.id === thread.has && reaches(thread, job, own, scale, room)),
    );
    const points = fitted(
      own.filter((job) => !ends.includes(job)),
      scale,
      room,
    );
    const lanes = 1 + Math.max(0, ...points.map((point) => Math.round((point.y - FIRST) / LANE)));
    const last = ends.flatMap((job, i) =>
      job ? inLanes([[job]], scale, room).map((point) => ({ ...point, y: FIRST + (lanes + i) * LANE })) : [],
    );
    const height = Math.max(LEAST, FIRST + (lanes + here.length) * LANE - 8);
    const placed = {
      band,
      top,
      height,
      points: inTime([...points, ...last]).map((point) => ({ ...point, y: point.y + top })),
      jobs: own.length,
    };
    top += height;
    return placed;
  });
  return { bands, height: top, threads: threads.flatMap((thread) => placeThread(thread, threads, bands, room)) };
}

/** Whether a thread can run straight to the job that has the part: far enough to the right for its plate to stand between. */
function reaches(thread: LaidThread, job: DayJob, own: readonly DayJob[], scale: DayScale, room: DayRoom): boolean {
  const waits = own.find((one) => one.id === thread.waits);
  if (waits?.promised == null || job.promised === null) return false;
  const [from, to] = [scale.at(waits.promised), scale.at(job.promised)];
  return to > from + room.plateWidth(thread) + 48 && to + 20 + room.widthOf([job]) < room.right;
}

const inTime = (points: readonly LaidPoint[]) => [...points].sort((a, b) => a.x - b.x);

function fitted(jobs: readonly DayJob[], scale: DayScale, room: DayRoom): readonly LaidPoint[] {
  const groups: DayJob[][] = [...jobs]
    .sort((a, b) => (a.promised ?? Number.POSITIVE_INFINITY) - (b.promised ?? Number.POSITIVE_INFINITY))
    .map((job) => [job]);
  for (let day = scale.days.length - 1; ; day -= 1) {
    const points = inLanes(groups, scale, room);
    const lanes = 1 + Math.max(0, ...points.map((point) => Math.round((point.y - FIRST) / LANE)));
    if (lanes <= room.lanes || day < 1) return points;
    gather(groups, scale, day);
  }
}

function gather(groups: DayJob[][], scale: DayScale, day: number): void {
  const from = scale.days[day]?.opens ?? 0;
  const to = scale.days[day + 1]?.opens ?? Number.POSITIVE_INFINITY;
  const inDay = groups.filter(([job]) => job?.promised != null && job.promised >= from && job.promised < to);
  const [first, ...others] = inDay;
  if (!first || others.length === 0) return;
  const at = groups.indexOf(first);
  for (const group of inDay) groups.splice(groups.indexOf(group), 1);
  groups.splice(at, 0, inDay.flat());
}

function inLanes(groups: readonly (readonly DayJob[])[], scale: DayScale, room: DayRoom): readonly LaidPoint[] {
  const start = scale.days[0]?.opens ?? 0;
  const before = groups.filter(([job]) => job?.promised != null && job.promised < start).length;
  const ends: number[][] = [];
  return groups.flatMap((jobs, i) => {
    const [first] = jobs;
    if (!first) return [];
    const early = first.promised !== null && first.promised < start;
    const x =
      first.promised === null
        ? room.right - 12
        : early
          ? room.left + 12 + (i * 30) / Math.max(1, before)
          : scale.at(first.promised);
    const bar = jobs.length === 1 && first.ninety !== null ? Math.max(x + 24, scale.at(first.ninety)) : null;
    const width = room.widthOf(jobs);
    const afterPoint = early ? Math.max(room.nowX + 16, x + 20) : (bar ?? x) + 20;
    const toLeft = afterPoint + width > room.right;
    const label = toLeft ? { x: x - 20, anchor: 'end' as const } : { x: afterPoint, anchor: 'start' as const };
    const box: [number, number] = toLeft ? [x - 20 - width, (bar ?? x) + 12] : [x - 14, afterPoint + width];
    let lane = 0;
    while (overlaps(ends[lane], box)) lane += 1;
    ends[lane] = [...(ends[lane] ?? []), ...box];
    return { jobs, x, y: FIRST + lane * LANE, bar, label };
  });
}

function overlaps(taken: readonly number[] | undefined, [from, to]: readonly [number, number]): boolean {
  if (!taken) return false;
  for (let i = 0; i < taken.length; i += 2)
    if (from < (taken[i + 1] ?? 0) + 12 && (taken[i] ?? 0) < to + 12) return true;
  return false;
}

/** Down from the job that waits, across by its plate, and to the job that has the part. */
function placeThread(
  thread: LaidThread,
  all: readonly LaidThread[],
  bands: readonly DayBand[],
  room: DayRoom,
): readonly PlacedThread[] {
  const find = (id: string) =>
    bands
      .flatMap((band) => band.points.map((point) => ({ band, point })))
      .find(({ point }) => point.jobs.some((job) => job.id === id));
  const waits = find(thread.waits);
  const has = find(thread.has);
  if (!waits || !has) return [];
  const mine = all.filter((other) =>
    waits.band.points.some((point) => point.jobs.some((job) => job.id === other.waits)),
  );
  const rows = waits.band.points.map((point) => point.y).filter((row) => row !== has.point.y);
  const straight = has.band === waits.band && has.point.y > Math.max(...rows);
  const y = straight
    ? has.point.y
    : waits.band.top + waits.band.height - 26 - (mine.length - 1 - mine.indexOf(thread)) * LANE;
  const width = room.plateWidth(thread);
  const right = has.point.x >= waits.point.x;
  const x = right ? Math.min(waits.point.x + 24, room.right - width) : Math.max(room.left, waits.point.x - 24 - width);
  const end = straight ? `H${has.point.x - 12}` : `H${has.point.x}V${has.point.y + (has.point.y > y ? -10 : 10)}`;
  return [
    {
      thread,
      plate: { x, y: y - 15, width },
      path: `M${waits.point.x} ${waits.point.y + 10}V${y}${end}`,
    },
  ];
}
