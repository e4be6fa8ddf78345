import { at, nth, wholeAt } from '../../../figures/rows.ts';
import type { Step as PlanStep } from '../../plan/problem/problem.ts';
import { suspectsOf } from '../belief/belief.ts';
import { inPlace } from '../belief/inPlace.ts';
import { lookFrom } from '../configuration.ts';
import { timesDone } from '../gates/gates.ts';
import { seenToFail } from '../gates/standsNow.ts';
import { faultNumber, NOTHING_WRONG, stepNumber } from '../model/special.ts';
import type { Step, StepId } from '../types.ts';
import { MENDED_FROM } from '../verdict/verdictAfter.ts';
import { HIDDEN_AT_MOST, watchSince } from '../verdict/watch.ts';
import type { PlanNow } from './planStep.ts';
import type { HypothesisColumns } from './weightedHypotheses.ts';

/** What a step is planned with: watched by this step, so many times, until what was mended would have shown. */
export type ThenWatch = { readonly step: StepId; readonly times: number };
export type Planned = { readonly plan: PlanStep; readonly watch: ThenWatch | null };

/** Less of the belief coming and going than this is not planned for: a good trial tells at once. Common practice, no source. */
const WORTH_WATCHING = 0.05;

/** A long trial of the whole machine: its weighed minutes, P(quiet | hypothesis), and that of each fault still there. */
type Trial = {
  readonly at: number;
  readonly step: Step;
  readonly most: number;
  readonly minutes: number;
  readonly sound: number;
  readonly quiet: Float64Array;
  readonly ifThere: Float64Array;
};

/**
 * What comes and goes ends by mending it and watching for long enough. The steps are planned with that: a quiet watch may
 * end the tracing, and a handling whose good trial says little is followed by the least watch that would say enough.
 * `free`: so many of the steps, from the first, can be done now; only those are watched by, the others wait for a gate.
 */
export function countOnWatching(
  now: PlanNow,
  steps: readonly Step[],
  plans: readonly PlanStep[],
  free: number,
): readonly Planned[] {
  const plain = plans.map((plan) => ({ plan, watch: null }));
  const { columns, model, tracing } = now;
  const all = columns.p.reduce((sum, p) => sum + p, 0);
  const comes = columns.hypotheses.reduce((sum, { hypothesis, p }) => (hypothesis.firstMode === 1 ? sum + p : sum), 0);
  if (comes < WORTH_WATCHING * all || !seenToFail(model, tracing)) return plain;
  const trials = trialsOf(now, steps.slice(0, free), plans);
  const before = quietSoFar(now);
  return plain.map((one, s) => {
    const step = nth(steps, s);
    const trial = trials.find(({ at }) => at === s);
    if (trial) return watching(now, trial, one.plan, before) ?? one;
    return one.plan.cures.some(Boolean) ? one : (mending(now, step, one.plan, trials) ?? one);
  });
}

function trialsOf(now: PlanNow, steps: readonly Step[], plans: readonly PlanStep[]): readonly Trial[] {
  const { model, posterior, tracing, left } = now;
  return steps.flatMap((step, place) => {
    const plan = nth(plans, place);
    if (step.kind !== 'load' || step.onRig !== null || !step.exposure || step.takesOut.length > 0 || step.confirming)
      return [];
    const condition = inPlace(model, posterior.prior, stepNumber(model, step.id), lookFrom(left, step))[step.normal];
    if (!condition) return [];
    return [
      {
        at: place,
        step,
        most: step.repeatable - timesDone(model, tracing, step),
        minutes: plan.minutes,
        sound: condition.nothingSeen,
        quiet: nth(plan.chance, step.normal),
        ifThere: condition.seen,
      },
    ];
  });
}

/** P(quiet since the last mending | fault still there) by fault and mode; null where nothing was mended yet. */
function quietSoFar({ model, tracing, posterior, columns }: PlanNow): Float64Array | null {
  if (columns.presence.every((stands) => stands !== 0)) return null;
  return watchSince(model, tracing, posterior, suspectsOf(model, posterior))?.quiet ?? null;
}

/** A watch after what was mended before: does it end the tracing when it stays quiet, and how often must it be repeated? */
function watching(now: PlanNow, trial: Trial, plan: PlanStep, before: Float64Array | null): Planned | null {
  if (!before) return null;
  const { columns, model } = now;
  const nothing = faultNumber(model, NOTHING_WRONG);
  const isMended = (w: number) => columns.presence[w] === 0 && columns.first[w] !== nothing;
  for (let times = 1; times <= trial.most; times++) {
    let [all, good, mended, hidden] = [0, 0, 0, 0];
    for (let w = 0; w < columns.p.length; w++) {
      const p = at(columns.p, w);
      const place = wholeAt(columns.place, w);
      all += p * at(trial.quiet, w) ** times;
      if (!isMended(w)) continue;
      good += p * at(trial.quiet, w) ** times;
      mended += p;
      hidden += p * at(before, place) * at(trial.ifThere, place) ** times;
    }
    if (good < MENDED_FROM * all || hidden > HIDDEN_AT_MOST * mended) continue;
    const falseEnd = now.handOver.minutes;
    const stays = trial.quiet.map((quiet) => quiet ** times);
    const rest = stays.map((p, w) => {
      const once = 1 - at(trial.quiet, w);
      return once > 0 ? (1 - p) / once : 0;
    });
    const { normal } = trial.step;
    return {
      watch: times > 1 ? { step: trial.step.id, times } : null,
      plan: {
        ...plan,
        minutes: plan.minutes * times,
        cures: plan.cures.map((cures, o) => cures || o === normal),
        chance: plan.chance.map((row, o) => (o === normal ? stays : row.map((p, w) => p * at(rest, w)))),
        ending: stays.map((p, w) => (isMended(w) ? 0 : p * falseEnd)),
      },
    };
  }
  return null;
}

/** A handling with the least watch after it that would show what it did not mend. */
function mending(now: PlanNow, step: Step, plan: PlanStep, trials: readonly Trial[]): Planned | null {
  const works = step.outcomes.findIndex(({ meaning }) => meaning.means === 'works');
  const same = step.outcomes.findIndex(({ meaning }) => meaning.means === 'same');
  if (works < 0 || same < 0 || step.takesOut.length > 0 || step.confirming || step.kind === 'back') return null;
  const mended = mendedBy(now, step, works);
  if (!mended) return null;
  const { columns } = now;
  const worksAt = nth(plan.chance, works);
  let best: { readonly trial: Trial; readonly times: number; readonly minutes: number } | null = null;
  for (const trial of trials) {
    for (let times = 1; times <= trial.most; times++) {
      const minutes = trial.minutes * times;
      if (best && minutes >= best.minutes) break;
      if (!saysEnough({ columns, mended, worksAt, trial, times })) continue;
      best = { trial, times, minutes };
      break;
    }
  }
  if (!best) return null;
  const { trial, times, minutes } = best;
  const watch = { columns, mended, worksAt, trial, times };
  const still = new Float64Array(worksAt.length);
  const ends = new Float64Array(worksAt.length);
  let [all, worksP] = [0, 0];
  for (let w = 0; w < ends.length; w++) {
    still[w] = stillQuiet(watch, w);
    ends[w] = at(mended.row, w) * trial.sound ** times + at(still, w);
    all += at(columns.p, w);
    worksP += at(columns.p, w) * at(worksAt, w);
  }
  const falseEnd = now.handOver.minutes;
  return {
    watch: { step: trial.step.id, times },
    plan: {
      ...plan,
      minutes: plan.minutes + (minutes * worksP) / all,
      cures: plan.cures.map((_, o) => o === works),
      chance: plan.chance.map((row, o) => {
        if (o === works) return ends;
        return o === same ? row.map((p, w) => p + at(worksAt, w) - at(ends, w)) : row;
      }),
      ending: still.map((p) => p * falseEnd),
    },
  };
}

/** A trial that is watched so many times after a handling, and what the handling's own trial showed. */
type QuietWatch = {
  readonly columns: HypothesisColumns;
  readonly mended: Mended;
  /** P(the handling's own trial works | hypothesis). */
  readonly worksAt: Float64Array;
  readonly trial: Trial;
  readonly times: number;
};

/** P(its own trial works and the watch stays quiet, and yet it was not mended | hypothesis). */
function stillQuiet({ columns: { presence }, mended: { row }, worksAt, trial, times }: QuietWatch, w: number): number {
  const { quiet, sound } = trial;
  const notMended = at(worksAt, w) - at(row, w);
  return notMended === 0 ? 0 : notMended * (presence[w] === 0 ? sound : at(quiet, w)) ** times;
}

/** Would a quiet watch leave it mended likely enough, and show it often enough had it stayed? */
function saysEnough(watch: QuietWatch): boolean {
  const { columns, mended, worksAt, trial, times } = watch;
  const sound = trial.sound ** times;
  let [good, still, all, hidden] = [0, 0, 0, 0];
  for (let w = 0; w < worksAt.length; w++) {
    const p = at(columns.p, w);
    const row = at(mended.row, w);
    still += p * stillQuiet(watch, w);
    if (row === 0) continue;
    good += p * row * sound;
    all += p * row;
    hidden += p * at(mended.hidden, w) * at(trial.ifThere, wholeAt(columns.place, w)) ** times;
  }
  return good >= MENDED_FROM * (good + still) && hidden <= HIDDEN_AT_MOST * all;
}

type Mended = { readonly row: Float64Array; readonly hidden: Float64Array };

/**
 * By hypothesis: P(this mends it, or it was mended before, and the step's own trial works), and the same as it would look had it
 * stayed there all the same. Null where nothing of the belief is mended by it.
 */
function mendedBy({ model, posterior, columns, left }: PlanNow, step: Step, works: number): Mended | null {
  if (Object.keys(step.mends).length === 0) return null;
  const condition = inPlace(model, posterior.prior, stepNumber(model, step.id), lookFrom(left, step))[works];
  if (!condition) return null;
  const nothing = faultNumber(model, NOTHING_WRONG);
  const row = new Float64Array(columns.p.length);
  const hidden = new Float64Array(columns.p.length);
  let any = false;
  for (let w = 0; w < row.length; w++) {
    const fault = wholeAt(columns.first, w);
    if (columns.alone[w] === 0 || fault === nothing) continue;
    const mend = columns.presence[w] === 0 ? 1 : at(condition.mends, fault);
    if (mend === 0) continue;
    any ||= columns.presence[w] !== 0;
    row[w] = mend * condition.nothingSeen;
    hidden[w] = at(row, w) * at(condition.seen, wholeAt(columns.place, w));
  }
  return any ? { row, hidden } : null;
}
