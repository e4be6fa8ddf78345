/** Maps values of one kind onto a length in px, from 0. */
export type Scale = { readonly from: number; readonly to: number; readonly length: number; at(value: number): number };

/** Equal steps. */
export function linearScale(from: number, to: number, length: number): Scale {
  const span = to - from || 1;
  return { from, to, length, at: (value) => ((value - from) / span) * length };
}

/** An open span of time and the px it is given; between spans time is folded away. */
export type Span = { readonly from: number; readonly to: number; readonly length: number };

/**
 * Time with closed hours folded at joints: each span to its own scale, `joint` px between them.
 * A moment inside a fold stands on the joint's middle; before the first and after the last it stands at the end.
 */
export function foldedScale(
  spans: readonly Span[],
  joint: number,
): Scale & { readonly joints: readonly number[]; readonly starts: readonly number[] } {
  const starts: number[] = [];
  let x = 0;
  for (const span of spans) {
    starts.push(x);
    x += span.length + joint;
  }
  const length = Math.max(0, x - joint);
  return {
    from: spans[0]?.from ?? 0,
    to: spans.at(-1)?.to ?? 0,
    length,
    starts,
    joints: starts.slice(1).map((start) => start - joint / 2),
    at: (value) => {
      for (const [i, span] of spans.entries()) {
        const start = starts[i] ?? 0;
        if (value < span.from) return i === 0 ? 0 : start - joint / 2;
        if (value <= span.to) return start + ((value - span.from) / (span.to - span.from || 1)) * span.length;
      }
      return length;
    },
  };
}

const LN99 = Math.log(99);
const logit = (p: number) => Math.log(p / (1 - p));

/** Rungs of the ladder: fixed, in words, no per cent. */
export const RUNGS = [1 / 100, 1 / 20, 1 / 5, 1 / 2, 4 / 5, 19 / 20, 99 / 100] as const;

/** Height above the foot for a chance, as a share of the rails: 0 at 1 in 100, 1 at 99 in 100, clamped outside. */
export function logOddsHeight(chance: number): number {
  const clamped = Math.min(0.99, Math.max(0.01, chance));
  return (logit(clamped) + LN99) / (2 * LN99);
}
