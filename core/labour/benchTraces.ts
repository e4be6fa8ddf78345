import type { Prng } from '../figures/prng.ts';
import { at, nth } from '../figures/rows.ts';
import { assemblyOf, closingMinutes, movesBefore } from '../tracing/live/assembly.ts';
import type { Condition } from '../tracing/live/belief/condition.ts';
import type { Hypothesis } from '../tracing/live/belief/hypotheses.ts';
import { inPlace } from '../tracing/live/belief/inPlace.ts';
import { outlook } from '../tracing/live/belief/outlook.ts';
import { posteriorOf } from '../tracing/live/belief/posterior.ts';
import { FIRST, hypothesisOf, maskOfPlace, SECOND } from '../tracing/live/belief/presence.ts';
import { priorOf } from '../tracing/live/belief/prior.ts';
import { leftOutAfter, lookMask } from '../tracing/live/configuration.ts';
import { loanerFor } from '../tracing/live/gates/available.ts';
import { stepNumber, stepOf } from '../tracing/live/model/special.ts';
import { offerStep } from '../tracing/live/offer/offerStep.ts';
import { openStates } from '../tracing/live/offer/openStates.ts';
import type { EngineVerdict, FaultModel, LoggedStep, Step, TracingCase } from '../tracing/live/types.ts';
import { verdictAfter } from '../tracing/live/verdict/verdictAfter.ts';
import { draw, MOST_TRACED_STEPS, stepMinutes, type Traced, type Traces } from './traced.ts';

/** The limit counts as if so many minutes were left at least: how long the whole takes is asked, not where it would stop. */
const LEAST_LEFT = 300;

/** What the Bench says after one history: a step with what must be opened first, or the end. */
type Said =
  | { readonly step: Step; readonly moves: number; readonly conditions: readonly Condition[] }
  | { readonly verdict: EngineVerdict; readonly closing: number };
type Moment = { readonly tracing: TracingCase; said: Said | null; readonly next: Map<number, Moment> };

/** One machine of a run: what is wrong with it, and what of that is still there (bits as the belief has them). */
type Truth = { readonly hypothesis: Hypothesis; readonly there: number };

/**
 * Runs as the Bench itself goes: each step the one it offers by looking two steps ahead, gates and confirming included,
 * until its verdict ends the tracing or it hands over. Null when nothing is left to trace, or never was anything.
 */
export function benchTraces(model: FaultModel, given: TracingCase | null): Traces | null {
  if (!given) return null;
  const { limitMinor, spentMinor, perMinuteMinor } = given.money;
  const money = { ...given.money, limitMinor: Math.max(limitMinor ?? 0, spentMinor + LEAST_LEFT * perMinuteMinor) };
  const start: Moment = { tracing: { ...given, money }, said: null, next: new Map() };
  if (['confirmed', 'cured'].includes(verdictAfter(model, start.tracing).verdict)) return null;
  const truths = truthsOf(model, start.tracing);
  const never = new Float64Array(model.faults.length);
  let histories = 1;
  const saidAt = (moment: Moment): Said => {
    moment.said ??= saysOf(model, moment.tracing);
    return moment.said;
  };
  const after = (moment: Moment, step: Step, outcome: number): Moment => {
    const known = moment.next.get(outcome);
    if (known) return known;
    const met: Moment = { tracing: logged(model, moment.tracing, step, outcome), said: null, next: new Map() };
    moment.next.set(outcome, met);
    histories += 1;
    return met;
  };
  return {
    histories: () => histories,
    run: (stepTimes, random) => {
      const drawn = nth(truths.list, draw(truths.chances, random));
      const { hypothesis } = drawn;
      let { there } = drawn;
      let moment = start;
      let minutes = 0;
      for (let n = 0; n < MOST_TRACED_STEPS; n++) {
        const said = saidAt(moment);
        if ('verdict' in said) return endedBy(said.verdict, minutes + said.closing);
        const { step, moves, conditions } = said;
        minutes += moves + stepMinutes(step, stepTimes, random);
        there = mendedBy(conditions[0]?.mends ?? never, hypothesis, there, random);
        const chances = conditions.map((condition) => outlook(hypothesis, there, { ...condition, mends: never }));
        moment = after(moment, step, draw(summedToOne(chances), random));
        there = mendedBy(conditions[0]?.mendsAfter ?? never, hypothesis, there, random);
      }
      return { minutes, fault: null, ended: false };
    },
  };
}

/** Several faults at once share what is not normal: their chances may sum to a little more or less than one. */
function summedToOne(chances: readonly number[]): readonly number[] {
  const sum = chances.reduce((all, one) => all + one, 0);
  return chances.map((one) => one / sum);
}

/** Every way that the machine can be now, with its chance. */
function truthsOf(model: FaultModel, tracing: TracingCase) {
  const { hypotheses, mass } = posteriorOf(model, tracing);
  const list: Truth[] = [];
  const chances: number[] = [];
  mass.forEach((p, at) => {
    const hypothesis = hypotheses[hypothesisOf(at)];
    if (p <= 0 || !hypothesis) return;
    list.push({ hypothesis, there: maskOfPlace(at) });
    chances.push(p);
  });
  return { list, chances };
}

function saysOf(model: FaultModel, tracing: TracingCase): Said {
  const open = openStates(model, tracing);
  const assembly = assemblyOf(model, tracing.switches);
  const { next } = offerStep(model, tracing, { method: 'rollout' });
  if (!next) return { verdict: verdictAfter(model, tracing), closing: closingMinutes(assembly, open) };
  const step = stepOf(model, next.step);
  const look = lookMask(model, tracing.log, step);
  return {
    step,
    moves: movesBefore(assembly, open, step).moves.reduce((sum, move) => sum + move.minutes, 0),
    conditions: inPlace(model, priorOf(model, tracing), stepNumber(model, step.id), look),
  };
}

/** The case after a step with this outcome: ours goes in where it borrows one, and stays where all works with it. */
function logged(model: FaultModel, tracing: TracingCase, step: Step, at: number): TracingCase {
  const outcome = step.outcomes[at];
  const stays = outcome?.meaning.means === 'works' && step.takesOut.length > 0;
  const loaners = [step.handling.borrows, ...step.handling.alsoBorrows].flatMap((kind) => {
    const found = kind && model.badLoaner[kind] ? loanerFor(tracing, kind) : null;
    return found && 'loaner' in found ? [found.loaner] : [];
  });
  const entry: LoggedStep = {
    entry: `run-${tracing.log.length}`,
    step: step.id,
    outcome: outcome?.id ?? '',
    handsOn: step.handsOn,
    waiting: step.waiting,
    loaners: loaners.map(({ id, kind, standing }) => ({ id, kind, standing })),
    leftOut: leftOutAfter(model, tracing, step, stays),
    struck: false,
  };
  return { ...tracing, log: [...tracing.log, entry] };
}

function mendedBy(mends: Float64Array, { first, second }: Hypothesis, there: number, random: Prng): number {
  const goes = (bit: number, fault: number) =>
    (there & bit) !== 0 && fault >= 0 && random.next() < at(mends, fault) ? bit : 0;
  return there & ~goes(FIRST, first) & ~goes(SECOND, second);
}

/** What a verdict leaves to do: what is found is mended; what could not be reproduced, or was handed over, is not. */
function endedBy(verdict: EngineVerdict, minutes: number): Traced {
  return verdict.verdict === 'confirmed' || verdict.verdict === 'cured' || verdict.verdict === 'named'
    ? { minutes, fault: verdict.fault, ended: true }
    : { minutes, fault: null, ended: false };
}
