import { at, sumOf, wholeAt } from '../../../figures/rows.ts';
import { lookMask } from '../configuration.ts';
import { GROUPS } from '../groups.ts';
import type { Kept } from '../memory.ts';
import { MADE_BY_US, NOTHING_WRONG, stepNumber, WATCH_START } from '../model/special.ts';
import { LIFE_OF, reaches } from '../reach.ts';
import { groupsSeen, groupsTold } from '../readGroups.ts';
import type { Fault, FaultModel, Group, Rate, TracingCase } from '../types.ts';
import { likelihoodOf, newPartOf, oftenTold } from './likelihood.ts';

/** How an hour of use splits into load and idle when a rate is told "per hour": from memory, no source. */
const LOAD_SHARE = 0.25;

const UNDER_LOAD = 'load';
/** The same load again, for as long as a short load trial takes: common practice, no source. */
const LOAD_TRIAL_HOURS = 1 / 3;

/** What is believed before the log: everything told, and what was seen at the first start. */
export type Prior = {
  /** P(fault), alone, sums to 1 over all faults. */
  readonly weight: Float64Array;
  /** P(comes and goes | fault). */
  readonly comesAndGoes: Float64Array;
  readonly rate: readonly Rate[];
  /** P(the machine shows this group | fault), over GROUPS. */
  readonly shows: readonly Float64Array[];
  /** P(the second | the first) of the model's listed pairs, after what was told. */
  readonly together: readonly number[];
  /** Hours under load that every handling is tried for beyond its own trial: what fails only under load is tried under it. */
  readonly triedFor: number;
};

/** By all that a prior is made of. */
const PRIORS: Kept<Map<string, Prior>> = { begin: () => new Map() };
/** So many priors are kept per model: more cases than a shop has on its benches in a day. */
const MOST_KEPT = 64;

/** As `makePrior`; what was told, seen and stands in the machine is asked once. */
export function priorOf(model: FaultModel, tracing: TracingCase): Prior {
  const kept = model.memory.of(model, PRIORS);
  const out = watchMask(model, tracing);
  const key = JSON.stringify([
    tracing.told,
    tracing.hunch,
    tracing.seen,
    groupsSeen(model, tracing),
    tracing.machine,
    newPartOf(tracing),
    tracing.switches,
    out,
  ]);
  const before = kept.get(key);
  if (before) return before;
  const made = makePrior(model, tracing, out);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, made);
  return made;
}

/**
 * The prior of every fault f, from what was told before, what was seen at the first start, and the machine:
 *
 *     P(f) ∝ W_f · L_f · k_f,    W_f = Σ_g w_fg · told(g) · seen_f(g),    k_f = c_f·C + (1 − c_f)·S
 *     P(shows g | f) = w_fg · told(g) · seen_f(g) ÷ W_f
 *     P(comes and goes | f) = c_f·C ÷ k_f
 *
 * w_fg: pseudo-weight of f in group g, the model's floor where it has none. told(g), seen_f(g): 1 for a group that was
 * told, seen, or where nothing was; else the chance of taking it for one of those (`confused`, `seenAs`), at least
 * `toldWrong`, `seenWrong`; of a fault that was out of circuit at the first start nothing was seen. L_f: the product of how
 * many times likelier f is by each term, history, "only when", fact and hunch told or known (`likelihoodOf`). c_f: how much of f
 * comes and goes; C, S: how well what was told of "how often", and groups that tell of now and then, suit what comes and
 * goes, and what is steady; k is 1 for nothing wrong. Faults of our own making have no prior.
 *
 * Groups and terms count as independent given f (naive Bayes: Heckerman, Breese and Rommelse, CACM 38(3), 1995, from
 * memory). Weights: each with its source in the model. The floor keeps every W_f above 0.
 */
function makePrior(model: FaultModel, tracing: TracingCase, out: number): Prior {
  const told = groupsTold(model, tracing.told.symptoms);
  const seen = groupsSeen(model, tracing);
  const byTold = Float64Array.from(GROUPS, (group) => toldWeight(model, told, group));
  const bySeen = Float64Array.from(GROUPS, (group) => seenWeight(model, seen, group));
  const ifOut = seen.length === 0 || seen.includes('not-shown') ? 1 : model.seenWrong;
  const works = seen.length > 0 && seen.every((group) => group === 'not-shown');
  const often = oftenTold(model, tracing);
  const now = seen.length > 0 ? seen : told;
  const fitful = now.length > 0 && now.every((group) => model.nowAndThen.groups.includes(group));
  const oftenSteady = often.reduce((k, each) => k * each.steady, 1);
  const steady = oftenSteady * (fitful ? model.nowAndThen.steady : 1);
  const comes = often.reduce((k, each) => k * each.comesAndGoes, 1);
  const toldRate = tracing.told.rate ?? often.find((each) => each.rate)?.rate ?? null;
  const likelihood = likelihoodOf(model, tracing);

  const weight = new Float64Array(model.faults.length);
  const comesAndGoes = new Float64Array(model.faults.length);
  const shows: Float64Array[] = [];
  model.faults.forEach((fault, f) => {
    const inCircuit = (wholeAt(model.faultMask, f) & out) === 0;
    // Of what the bench supplies itself nothing shows here: not when all works, and hardly when it fails.
    const byBench = inCircuit && seen.length > 0 ? fault.atBench : 1;
    const atHome = works ? 1 - byBench : 0;
    const groups = Float64Array.from(
      GROUPS,
      (group, g) =>
        (fault.weights[group] ?? floorOf(model, fault, seen, group)) *
        at(byTold, g) *
        (inCircuit ? atHome + byBench * at(bySeen, g) : ifOut),
    );
    const sum = sumOf(groups);
    shows.push(sum > 0 ? groups.map((w) => w / sum) : groups);
    const c = fault.comesAndGoes;
    const stays = works && (!inCircuit || fault.atBench < 1) ? oftenSteady : steady;
    const fits = c * comes + (1 - c) * stays;
    comesAndGoes[f] = fits > 0 ? (c * comes) / fits : 0;
    weight[f] = fault.id === MADE_BY_US ? 0 : likelihood(f, sum * (fault.id === NOTHING_WRONG ? 1 : fits));
  });
  const total = sumOf(weight);
  return {
    weight: weight.map((w) => w / total),
    comesAndGoes,
    rate: model.faults.map((fault) => ratesOf(fault.rate, toldRate)),
    shows,
    triedFor: tracing.told.onlyWhen.includes(UNDER_LOAD) ? LOAD_TRIAL_HOURS : 0,
    together: model.pairs.map((pair) =>
      tracing.told.changed.reduce((most, history) => Math.max(most, pair.told[history] ?? 0), pair.weight),
    ),
  };
}

/** Seen here and not told: what lets no machine get that far is no more likely for having no weight there. From memory, no source. */
const UNREACHED = 0.1;

/** Weight of a fault in a group where the model lists none for it. */
function floorOf({ floor }: FaultModel, { weights }: Fault, seen: readonly Group[], group: Group): number {
  if (!seen.includes(group)) return floor;
  const gets = GROUPS.some((one) => weights[one] !== undefined && reaches(LIFE_OF[one], LIFE_OF[group]));
  return gets ? floor : floor * UNREACHED;
}

function toldWeight(model: FaultModel, told: readonly Group[], shows: Group): number {
  if (told.length === 0 || told.includes(shows)) return 1;
  return model.confused.reduce(
    (most, each) => (each.shows === shows && told.includes(each.told) ? Math.max(most, each.weight) : most),
    model.toldWrong,
  );
}

function seenWeight(model: FaultModel, seen: readonly Group[], shows: Group): number {
  if (seen.length === 0 || seen.includes(shows)) return 1;
  return model.seenAs.reduce(
    (most, each) => (each.shows === shows && seen.includes(each.seen) ? Math.max(most, each.weight) : most),
    model.seenWrong,
  );
}

/** What was out of circuit when the first start was watched: what sits there cannot have shown. */
function watchMask(model: FaultModel, tracing: TracingCase): number {
  const log = tracing.log.filter((entry) => !entry.struck);
  const watched = log.findIndex((entry) => entry.step === WATCH_START);
  const step = model.steps[stepNumber(model, WATCH_START)];
  return step ? lookMask(model, watched < 0 ? [] : log.slice(0, watched), step).before : 0;
}

/** A fault's rates, brought to what was told: its own shape over load and idle hours, the told frequency. */
function ratesOf(own: Rate, told: { readonly perStart: number; readonly perHour: number } | null): Rate {
  if (!told) return own;
  const hourly = LOAD_SHARE * own.perLoadHour + (1 - LOAD_SHARE) * own.perIdleHour;
  const scale = told.perHour > 0 && hourly > 0 ? told.perHour / hourly : 1;
  return {
    perStart: told.perStart > 0 ? told.perStart : own.perStart * Math.min(1, scale),
    perLoadHour: own.perLoadHour * scale,
    perIdleHour: own.perIdleHour * scale,
  };
}
