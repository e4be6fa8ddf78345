import { spread } from '../spread.ts';
import { logOddsHeight } from './scale.ts';

export type LadderSuspect = {
  readonly id: string;
  readonly name: string;
  /** Chance that the fault is here, 0..1. */
  readonly chance: number;
  /** The step now advised asks about this one. */
  readonly asked?: boolean;
};
export type LadderPoint = { readonly suspect: LadderSuspect; readonly y: number; readonly labelY: number };
export type LadderLayout = {
  readonly y: (chance: number) => number;
  readonly points: readonly LadderPoint[];
  /** Below 1 in 100: off the rails, counted at the foot. */
  readonly lower: readonly LadderSuspect[];
};

/** From here down a suspect leaves the rails. */
const OFF = 0.01;

/**
 * Where each suspect stands on rails from `top` to `foot` px. Height is log-odds and fixed: never sorted anew, never
 * scaled to fit. Labels slide apart where they would touch; points never do.
 * @param labelHeight px a label takes, by suspect (two lines when its name is long).
 */
export function ladderLayout(
  suspects: readonly LadderSuspect[],
  top: number,
  foot: number,
  labelHeight: (suspect: LadderSuspect) => number,
): LadderLayout {
  const y = (chance: number) => foot - logOddsHeight(chance) * (foot - top);
  const on = suspects.filter((suspect) => suspect.chance >= OFF).map((suspect) => ({ suspect, y: y(suspect.chance) }));
  const downwards = [...on].sort((a, b) => a.y - b.y);
  const labels = spread(
    downwards.map((point) => ({ at: point.y, size: labelHeight(point.suspect) })),
    top - 14,
    foot + 14,
  );
  return {
    y,
    lower: suspects.filter((suspect) => suspect.chance < OFF),
    points: downwards.map((point, i) => ({ ...point, labelY: labels[i] ?? point.y })),
  };
}
