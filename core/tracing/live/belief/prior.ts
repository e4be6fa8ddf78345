import { at } from '../../../figures/rows.ts';
import { NEW_PARTS, type NewPart } from '../case.ts';
import { lookMask } from '../configuration.ts';
import { GROUPS } from '../groups.ts';
import type { Kept } from '../memory.ts';
import { MADE_BY_US, NOTHING_WRONG, stepNumber, WATCH_START } from '../model/special.ts';
import { groupsSeen, groupsTold } from '../readGroups.ts';
import type { Fault, FaultModel, Group, Rate, TracingCase } from '../types.ts';
import { byFacts } from './facts.ts';
import { byTerms } from './terms.ts';

/** How an hour of use splits into load and idle when a rate is told "per hour": from memory, no source. */
const LOAD_SHARE = 0.25;

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
 * The prior of every fault: pseudo-weights of the groups that were told (and, softened, of those they are confused
 * with) and seen, times what the very terms say, what changed last and "only when", what is known of the machine, and
 * how well "how often" suits a steady fault. What the bench itself supplied is hardly at fault once it was seen there.
 */
function makePrior(model: FaultModel, tracing: TracingCase, out: number): Prior {
  const told = groupsTold(model, tracing.told.symptoms);
  const seen = groupsSeen(model, tracing);
  const terms = byTerms(model, tracing);
  const facts = byFacts(model, tracing);
  const newPart = newPartOf(tracing);
  const added = newPart === null ? {} : (model.added.get(newPart) ?? {});
  const byTold = Float64Array.from(GROUPS, (group) => toldWeight(model, told, group));
  const bySeen = Float64Array.from(GROUPS, (group) => seenWeight(model, seen, group));
  const ifOut = seen.length === 0 || seen.includes('not-shown') ? 1 : model.seenWrong;
  const often = model.often.filter((each) => tracing.told.often.includes(each.id));
  const now = seen.length > 0 ? seen : told;
  const fitful = now.length > 0 && now.every((group) => model.nowAndThen.groups.includes(group));
  const steady = often.reduce((k, each) => k * each.steady, fitful ? model.nowAndThen.steady : 1);
  const comes = often.reduce((k, each) => k * each.comesAndGoes, 1);
  const told1 = tracing.told.rate ?? often.find((each) => each.rate)?.rate ?? null;

  const weight = new Float64Array(model.faults.length);
  const comesAndGoes = new Float64Array(model.faults.length);
  const shows: Float64Array[] = [];
  model.faults.forEach((fault, f) => {
    const inCircuit = ((model.faultMask[f] ?? 0) & out) === 0;
    const groups = new Float64Array(GROUPS.length);
    let sum = 0;
    GROUPS.forEach((group, g) => {
      const w = (fault.weights[group] ?? model.floor) * (byTold[g] ?? 0) * (inCircuit ? (bySeen[g] ?? 0) : ifOut);
      groups[g] = w;
      sum += w;
    });
    shows.push(sum > 0 ? groups.map((w) => w / sum) : groups);
    const c = fault.comesAndGoes;
    const fits = c * comes + (1 - c) * steady;
    comesAndGoes[f] = fits > 0 ? (c * comes) / fits : 0;
    weight[f] =
      fault.id === MADE_BY_US
        ? 0
        : sum *
          (fault.id === NOTHING_WRONG ? 1 : fits) *
          historyOf(model, tracing, fault.id) *
          at(terms, f) *
          at(facts, f) *
          (added[fault.id] ?? 1) *
          (seen.length > 0 ? fault.atBench : 1) *
          machineFactor(fault, tracing);
  });
  const total = weight.reduce((a, b) => a + b, 0);
  return {
    weight: weight.map((w) => w / total),
    comesAndGoes,
    rate: model.faults.map((fault) => ratesOf(fault.rate, told1)),
    shows,
    together: model.pairs.map((pair) =>
      tracing.told.changed.reduce((most, history) => Math.max(most, pair.told[history] ?? 0), pair.weight),
    ),
  };
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

/** What the machine is said not to have can hardly be at fault; it may have been said wrongly. */
const SAID_ABSENT = 0.02;

function machineFactor({ id, circuits }: Fault, { machine }: TracingCase): number {
  const absent =
    (machine.riser === false && circuits.includes('riser')) ||
    (machine.addIns === false && circuits.includes('add-in')) ||
    (machine.card === false &&
      (circuits.includes('card') || circuits.includes('card-slot') || circuits.includes('aux-lead'))) ||
    (machine.drives === 0 && circuits.includes('drive')) ||
    (machine.encrypted === 'no' && id === 'disk-locked');
  return absent ? SAID_ABSENT : 1;
}

/** How many times likelier a fault is by what changed last and by "only when". */
function historyOf(model: FaultModel, tracing: TracingCase, fault: string): number {
  const said = [...tracing.told.changed, ...tracing.told.onlyWhen];
  const often = model.often.filter((each) => tracing.told.often.includes(each.id));
  return [...model.evidence.filter((each) => said.includes(each.id)), ...often].reduce(
    (times, each) => times * (each.multiplies[fault] ?? 1),
    1,
  );
}

/** Which part was added, where it is known: of the machine, or by what was asked and answered. */
export function newPartOf({ machine, log }: TracingCase): NewPart | null {
  const asked = log.findLast((entry) => !entry.struck && entry.step === 'ask-part');
  return machine.newPart ?? NEW_PARTS.find((kind) => kind === asked?.outcome) ?? null;
}

/** A fault's rates, brought to what was told: its own shape over load and idle hours, the told frequency. */
function ratesOf(own: Rate, told: { readonly perStart: number; readonly perHour: number } | null): Rate {
  if (!told) return own;
  const hourly = LOAD_SHARE * own.perLoadHour + (1 - LOAD_SHARE) * own.perIdleHour;
  const scale = told.perHour > 0 && hourly > 0 ? told.perHour / hourly : 1;
  return {
    perStart: told.perStart > 0 ? told.perStart : Math.min(0.95, own.perStart * scale),
    perLoadHour: own.perLoadHour * scale,
    perIdleHour: own.perIdleHour * scale,
  };
}
