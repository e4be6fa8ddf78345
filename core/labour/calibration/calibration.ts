import { clopperPearson, type Interval } from '../../figures/interval.ts';
import { medianInterval } from '../../figures/medianInterval.ts';
import { pinball } from '../../figures/pinball.ts';
import { quantile } from '../../figures/quantile.ts';
import { WIDEST } from '../../figures/verdict.ts';

/** What an estimate said and what it took: hands-on minutes of the whole job. */
export type Scored = { readonly p10: number; readonly p50: number; readonly p90: number; readonly took: number };

/** A share of the jobs with its exact 95 % interval. */
type Share = { readonly count: number; readonly of: number; readonly share: number; readonly interval: Interval };

/** How estimates stand to what their jobs took. */
export type Calibration = {
  /** Jobs between P10 and P90, which should be eight in ten. */
  readonly inside: Share & { readonly says: 'as-said' | 'too-narrow' | 'too-wide' | 'too-few-to-say' };
  /** Jobs done within what was said for 10, 50 and 90 in 100. */
  readonly within: readonly (Share & { readonly said: 0.1 | 0.5 | 0.9 })[];
  /** Mean loss of the three figures, minutes a job: the lower, the nearer and the sharper. */
  readonly pinball: { readonly p10: number; readonly p50: number; readonly p90: number };
  /** What jobs took over what was said in the middle: its median, with its 95 % interval where there are enough. */
  readonly bias: { readonly times: number; readonly interval: Interval | null };
};

/** The band of an estimate holds so many jobs when it is right. */
const BAND = 0.8;
const SAID = [0.1, 0.5, 0.9] as const;

/** Scores estimates against closed jobs, one estimate a job, so that the shares are of independent jobs. `null` for none. */
export function calibrationOf(scored: readonly Scored[]): Calibration | null {
  if (scored.length === 0) return null;
  const inside = shareOf(scored, ({ p10, p90, took }) => p10 <= took && took <= p90);
  const figure = { 0.1: 'p10', 0.5: 'p50', 0.9: 'p90' } as const;
  const mean = (of: (one: Scored) => number) => scored.reduce((sum, one) => sum + of(one), 0) / scored.length;
  const ratios = scored.map(({ took, p50 }) => took / Math.max(p50, SHORTEST));
  return {
    inside: { ...inside, says: saysOf(inside.interval) },
    within: SAID.map((said) => ({ said, ...shareOf(scored, (one) => one.took <= one[figure[said]]) })),
    pinball: {
      p10: mean((one) => pinball(one.p10, one.took, 0.1)),
      p50: mean((one) => pinball(one.p50, one.took, 0.5)),
      p90: mean((one) => pinball(one.p90, one.took, 0.9)),
    },
    bias: { times: quantile(ratios, 0.5) ?? 1, interval: medianInterval(ratios) },
  };
}

/** What was said is taken as this many minutes at least: nothing can be so many times nothing. */
const SHORTEST = 0.1;

function shareOf(scored: readonly Scored[], is: (one: Scored) => boolean): Share {
  const count = scored.filter(is).length;
  return { count, of: scored.length, share: count / scored.length, interval: clopperPearson(count, scored.length) };
}

/** The interval leaves eight in ten out, or it holds it: closely enough to say so, or not. */
function saysOf({ low, high }: Interval): Calibration['inside']['says'] {
  if (high < BAND) return 'too-narrow';
  if (low > BAND) return 'too-wide';
  return high - low > WIDEST ? 'too-few-to-say' : 'as-said';
}
