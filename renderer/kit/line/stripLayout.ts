import { MINUTE_MS } from '../../../core/time.ts';
import type { LineTick } from '../plot/RuleLine.tsx';
import { foldedScale, type Span } from '../plot/scale.ts';

export type StripEntry = {
  readonly id: string;
  /** ms. */
  readonly at: number;
  readonly label: string;
  /** Minutes. */
  readonly handsOn: number;
  readonly waiting: number;
  /** Waiting for the owner's word: dots instead of an open block, with these words inside. */
  readonly ownersWord?: string;
  readonly note?: string;
  readonly photographs?: number;
  /** Taken back: its label is struck through, its time stays. */
  readonly struck?: boolean;
};
/** Time folded away: a night, a lunch, a long wait for an answer. */
export type FoldedRun = { readonly from: number; readonly to: number };

export type StripBlock = {
  readonly entry: StripEntry;
  readonly x: number;
  /** px of hands-on, then of waiting. */
  readonly hands: number;
  readonly waits: number;
  /** Row of the label: 0 just above the block, 1 higher on a stem; null where both are taken. */
  readonly row: 0 | 1 | null;
  readonly labelX: number;
};
export type StripLayout = {
  readonly width: number;
  readonly blocks: readonly StripBlock[];
  readonly ticks: readonly LineTick[];
  readonly joints: readonly number[];
  readonly now: number | null;
  readonly x: (at: number) => number;
};

const JOINT = 30;

/** How the strip is written. */
export type StripScale = {
  /** 12.4 in a small window, 19.2 in a large one. */
  readonly pxPerMinute: number;
  /** How a moment is written on the ruler. */
  readonly label: (at: number) => string;
  /** px of a label. */
  readonly widthOf: (text: string) => number;
};

/** The log to scale: every minute the same width, folds taken out. */
export function stripLayout(
  entries: readonly StripEntry[],
  folds: readonly FoldedRun[],
  now: number | null,
  { pxPerMinute, label, widthOf }: StripScale,
): StripLayout {
  const sorted = [...entries].sort((a, b) => a.at - b.at);
  const first = sorted[0]?.at ?? now ?? 0;
  const end = Math.max(
    now ?? 0,
    first,
    ...sorted.map((entry) => entry.at + (entry.handsOn + entry.waiting) * MINUTE_MS),
  );
  const spans = openSpans(Math.floor(first / MINUTE_MS) * MINUTE_MS, end + 10 * MINUTE_MS, folds, pxPerMinute);
  const scale = foldedScale(spans, JOINT);
  const x = (at: number) => scale.at(at);
  return {
    width: scale.length,
    x,
    joints: scale.joints,
    now: now === null ? null : x(now),
    ticks: spans.flatMap((span) => spanTicks(span, x, label)),
    blocks: labelled(
      sorted.map((entry) => {
        const start = x(entry.at);
        const handsEnd = x(entry.at + entry.handsOn * MINUTE_MS);
        return {
          entry,
          x: start,
          hands: handsEnd - start,
          waits: x(entry.at + (entry.handsOn + entry.waiting) * MINUTE_MS) - handsEnd,
        };
      }),
      widthOf,
    ),
  };
}

function openSpans(from: number, to: number, folds: readonly FoldedRun[], pxPerMinute: number): readonly Span[] {
  const spans: Span[] = [];
  let pen = from;
  const push = (a: number, b: number) => {
    if (b > a) spans.push({ from: a, to: b, length: ((b - a) / MINUTE_MS) * pxPerMinute });
  };
  for (const fold of [...folds].sort((a, b) => a.from - b.from)) {
    if (fold.to <= pen || fold.from >= to) continue;
    push(pen, Math.max(pen, fold.from));
    pen = Math.max(pen, fold.to);
  }
  push(pen, to);
  return spans;
}

function spanTicks(span: Span, x: (at: number) => number, label: (at: number) => string): readonly LineTick[] {
  const ticks: LineTick[] = [];
  for (let minute = Math.ceil(span.from / MINUTE_MS); minute * MINUTE_MS <= span.to; minute += 1) {
    const at = minute * MINUTE_MS;
    if (minute % 15 === 0) ticks.push({ at: x(at), size: 'long', label: label(at) });
    else ticks.push({ at: x(at), size: minute % 5 === 0 ? 'middle' : 'short' });
  }
  return ticks;
}

/** Two rows: the lower when it is free and does not run into the next block's label, else the higher; a third is dropped. */
function labelled(
  blocks: readonly Omit<StripBlock, 'row' | 'labelX'>[],
  widthOf: (text: string) => number,
): readonly StripBlock[] {
  const free: [number, number] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  return blocks.map((block, i) => {
    const width = widthOf(block.entry.label) + 10;
    const next = blocks[i + 1]?.x ?? Number.POSITIVE_INFINITY;
    const low = free[0] <= block.x;
    const high = free[1] <= block.x;
    const row = low && (block.x + width <= next || !high) ? 0 : high ? 1 : null;
    if (row !== null) free[row] = block.x + width + (row === 1 ? 6 : 0);
    return { ...block, row, labelX: block.x + (row === 1 ? 6 : 0) };
  });
}

/** Stretches without any entry that are longer than so many minutes, to be folded away; a rest of five minutes is left at both ends. */
export function quietFolds(
  entries: readonly StripEntry[],
  longerThan: number,
  now: number | null,
): readonly FoldedRun[] {
  const sorted = [...entries].sort((a, b) => a.at - b.at);
  const rest = 5 * MINUTE_MS;
  const folds: FoldedRun[] = [];
  let end = Number.NaN;
  for (const entry of sorted) {
    if (entry.at - end > longerThan * MINUTE_MS) folds.push({ from: end + rest, to: entry.at - rest });
    const done = entry.at + (entry.handsOn + (entry.ownersWord === undefined ? entry.waiting : 0)) * MINUTE_MS;
    end = Number.isNaN(end) ? done : Math.max(end, done);
  }
  if (now !== null && now - end > longerThan * MINUTE_MS) folds.push({ from: end + rest, to: now - rest });
  return folds;
}
