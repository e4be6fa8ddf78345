import { tableOf } from '../../../table.ts';
import { ENDS, type End } from './end.ts';
import type { Judged } from './judge.ts';

/** So many of so many. */
export type Share = { readonly of: number; readonly ok: number };

/** What a run over many cases comes to. */
export type Tally = {
  readonly cases: number;
  readonly ends: { readonly [end in End]: number };
  readonly dangerous: number;
  /** Cases in which anything was breached, with harm or without. */
  readonly foolish: number;
  readonly leftOpen: number;
  readonly firstSteps: Share;
  readonly firstThoughts: Share;
  readonly words: Share;
  readonly otherWays: number;
  /** Engine's minutes against the master's, over the cases ended rightly and over all; null where there is none. */
  readonly overRight: number | null;
  readonly overAll: number | null;
  /** Engine's minutes against the cheapest way of one who knows what is wrong, over the cases that have one. */
  readonly overKnowing: number | null;
  /** Cases that took too long beside the master, see `tooLong`. */
  readonly tooLong: number;
};

/** A case takes too long above so many times the master's minutes: where a shop would ask what went wrong. Our own choice, no source. */
const TIMES_AT_MOST = 2.5;
/** Minutes more than the master's that no case is blamed for: times two of a minute or two say nothing. Our own choice, no source. */
const MINUTES_MORE_AT_MOST = 6;

/** Did it take far longer than a master would: see the bound beside it? */
export const tooLong = ({ played: { minutes, case: bench } }: Judged): boolean =>
  minutes > Math.max(TIMES_AT_MOST * bench.master.minutes, bench.master.minutes + MINUTES_MORE_AT_MOST);

/** What many judged cases come to: ends counted, points asked and met, minutes against a master's (null: no master's minutes). */
export function tally(judged: readonly Judged[]): Tally {
  const counted = (among: (one: Judged) => boolean) => judged.filter(among).length;
  const points = (of: (one: Judged) => readonly { readonly ok: boolean | null }[]): Share => {
    const asked = judged.flatMap(of).filter(({ ok }) => ok !== null);
    return { of: asked.length, ok: asked.filter(({ ok }) => ok).length };
  };
  const checked = judged.reduce((sum, { words }) => sum + words.checked, 0);
  return {
    cases: judged.length,
    ends: tableOf(ENDS, (end) => counted((one) => one.end.end === end)),
    dangerous: counted((one) => one.dangerous),
    foolish: counted((one) => one.foolish),
    leftOpen: counted((one) => one.nevers.leftOpen.length > 0),
    firstSteps: points((one) => one.firstSteps),
    firstThoughts: points((one) => one.firstThoughts),
    words: { of: checked, ok: checked - judged.reduce((sum, { words }) => sum + words.wrong.length, 0) },
    otherWays: counted((one) => one.end.otherWay),
    overRight: timesMaster(judged.filter((one) => one.end.end === 'right')),
    overAll: timesMaster(judged),
    overKnowing: timesKnowing(judged),
    tooLong: counted(tooLong),
  };
}

function timesMaster(judged: readonly Judged[]): number | null {
  const master = judged.reduce((sum, { played }) => sum + played.case.master.minutes, 0);
  return master > 0 ? judged.reduce((sum, { played }) => sum + played.minutes, 0) / master : null;
}

function timesKnowing(judged: readonly Judged[]): number | null {
  const known = judged.filter(({ knowing }) => knowing !== null);
  const least = known.reduce((sum, { knowing }) => sum + (knowing ?? 0), 0);
  return least > 0 ? known.reduce((sum, { played }) => sum + played.minutes, 0) / least : null;
}
