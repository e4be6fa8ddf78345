import { at, nth, wholeAt } from '../../../figures/rows.ts';
import type { Look } from '../configuration.ts';
import { GROUPS } from '../groups.ts';
import type { Kept } from '../memory.ts';
import { faultNumber, MADE_BY_US, NOTHING_WRONG } from '../model/special.ts';
import type { FaultModel, Outcome, Step } from '../types.ts';
import type { Condition } from './condition.ts';
import type { Prior } from './prior.ts';
import { mendsOf } from './spent.ts';

const NOTHING_HELD = new Uint8Array();

/** The same looks as a repeat, the outcome with this id having come out last. */
export function asRepeat(
  model: FaultModel,
  step: Step,
  looks: readonly Condition[],
  last: string,
): readonly Condition[] {
  const before = step.outcomes.find(({ id }) => id === last);
  const held = (before && foundAnyway(model, before)) ?? NOTHING_HELD;
  return looks.map((look, o) => ({ ...look, held, again: step.outcomes[o]?.id === last ? 'same' : 'other' }));
}

/** The configuration that a step is looked at in. */
type LookedAt = Pick<Look, 'before' | 'look' | 'spent'>;
type Placed = LookedAt & { readonly conditions: readonly Condition[] };

/** By prior and step: all configurations that it was looked at in. */
const PLACED: Kept<WeakMap<Prior, Placed[][]>> = { begin: () => new WeakMap() };

/** By prior and by what of a look at several places was found. */
const FINDINGS: Kept<WeakMap<Prior, Map<string, readonly (readonly Condition[])[]>>> = { begin: () => new WeakMap() };

/**
 * One step in one configuration, each of its outcomes as a condition: nothing opened for it, first of its kind.
 * `before` and `look`: what is out of circuit, `spent`: which of its handlings were done, see `Look`. Laid out once per
 * prior and configuration.
 */
export function inPlace(
  model: FaultModel,
  prior: Prior,
  s: number,
  { before, look, spent }: LookedAt,
): readonly Condition[] {
  const placed = model.memory.of(model, PLACED);
  const steps = placed.get(prior) ?? model.steps.map(() => []);
  placed.set(prior, steps);
  const kept = nth(steps, s);
  const found = kept.find((one) => one.before === before && one.look === look && one.spent === spent);
  if (found) return found.conditions;
  const conditions = layOut({ model, prior, s, before, look, spent, table: tableOf(model, prior, s) });
  kept.push({ before, look, spent, conditions });
  return conditions;
}

/**
 * As `inPlace`, of a step that looks at several places: for each finding, in the model's order, the condition that it is
 * not there and that it is.
 */
export function findingsInPlace(
  model: FaultModel,
  prior: Prior,
  s: number,
  { before, look }: Pick<Look, 'before' | 'look'>,
): readonly (readonly Condition[])[] {
  const known = model.memory.of(model, FINDINGS);
  const steps = known.get(prior) ?? new Map<string, readonly (readonly Condition[])[]>();
  known.set(prior, steps);
  const key = `${s} ${before} ${look}`;
  const found = steps.get(key);
  if (found) return found;
  const made = (model.findings[s] ?? []).map(({ rows, nothing }, finding) => {
    const table = { rows, nothing, ours: nothing, normal: 0, anyway: [null, null] };
    return layOut({ model, prior, s, before, look, spent: 0, table }).map((condition) => ({ ...condition, finding }));
  });
  steps.set(key, made);
  return made;
}

/** 1 where a fault is in circuit for this step: not replaced, not unplugged, unless the step itself states what it shows. */
function circuitFlags(model: FaultModel, s: number, before: number, look: number): Uint8Array {
  const onRig = model.steps[s]?.onRig;
  const listed = onRig ? undefined : model.listed[s];
  const nothing = faultNumber(model, NOTHING_WRONG);
  const flags = new Uint8Array(model.faults.length);
  for (let f = 0; f < flags.length; f++) {
    const mask = wholeAt(model.faultMask, f);
    const isIn = (mask & look) === 0 || (listed?.[f] === 1 && (mask & before) === 0);
    flags[f] = isIn && f !== nothing ? 1 : 0;
  }
  return flags;
}

/** What outcomes are laid out from: a row of chances per fault, and what each finds of a fault that keeps away. */
type Table = {
  readonly rows: readonly Float64Array[];
  readonly nothing: Float64Array;
  readonly ours: Float64Array;
  readonly normal: number;
  readonly anyway: readonly (Uint8Array | null)[];
};

function tableOf(model: FaultModel, prior: Prior, s: number): Table {
  const step = nth(model.steps, s);
  return {
    rows: model.faults.map((_, f) => model.rows[s]?.[f] ?? mixed(model, prior, s, f)),
    nothing: nth(model.nothing, s),
    ours: nth(model.ours, s),
    normal: step.normal,
    anyway: step.outcomes.map((outcome) => foundAnyway(model, outcome)),
  };
}

/** A step to be laid out: which, in which configuration, and its chances. */
type ToLayOut = LookedAt & {
  readonly model: FaultModel;
  readonly prior: Prior;
  readonly s: number;
  readonly table: Table;
};

function layOut({ model, prior, s, before, look, spent, table }: ToLayOut): readonly Condition[] {
  const { rows, nothing, ours, normal: n, anyway } = table;
  const inCircuit = circuitFlags(model, s, before, look);
  const step = nth(model.steps, s);
  const faults = model.faults.length;
  const quiet = new Float64Array(faults);
  for (let f = 0; f < faults; f++) quiet[f] = inCircuit[f] === 1 ? quietChance(step, prior, f) : 1;
  const seen = anyway.map(() => new Float64Array(faults * 2));
  const bad = anyway.map(() => new Float64Array(faults));
  const rest = anyway.some((found) => found !== null)
    ? Float64Array.from(rows, (row, f) => elseLeft(row, nothing, (o) => anyway[o]?.[f] === 1))
    : null;
  for (let o = 0; o < nothing.length; o++) {
    const [all, alone] = [nth(seen, o), nth(bad, o)];
    const sound = at(nothing, o);
    const found = anyway[o];
    for (let f = 0; f < faults; f++) {
      const own = at(nth(rows, f), o);
      const away = at(quiet, f);
      const isIn = inCircuit[f] === 1;
      const whenAway = !isIn ? sound : found?.[f] === 1 ? own : (rest ? at(rest, f) : 1) * sound;
      alone[f] = own;
      all[f * 2] = isIn ? own : sound;
      all[f * 2 + 1] = (1 - away) * own + away * whenAway;
    }
  }
  const { mends, mendsAfter } = mendsOf(model, step, spent);
  return anyway.map((_, outcome) => ({
    step: s,
    before,
    look,
    spent,
    outcome,
    finding: null,
    isNormal: outcome === n,
    normal: nth(seen, n),
    seen: nth(seen, outcome),
    inCircuit,
    badNormal: nth(bad, n),
    badSeen: nth(bad, outcome),
    nothingNormal: at(nothing, n),
    nothingSeen: at(nothing, outcome),
    oursNormal: at(ours, n),
    oursSeen: at(ours, outcome),
    mends,
    mendsAfter,
    oursComes: 0,
    oursGoes: step.mends[MADE_BY_US] ?? 0,
    loaners: [],
    again: 'first' as const,
    held: NOTHING_HELD,
    outcomes: anyway.length,
  }));
}

/** 1 where this outcome is found of a fault whether it shows or not; null where of none. */
function foundAnyway(model: FaultModel, { whileQuiet }: Outcome): Uint8Array | null {
  if (whileQuiet.length === 0) return null;
  const found = new Uint8Array(model.faults.length);
  for (const id of whileQuiet) found[faultNumber(model, id)] = 1;
  return found;
}

/** What a fault that keeps away leaves to the other outcomes, against what a sound machine has there: 1 where it is found in no case. */
function elseLeft(row: Float64Array, nothing: Float64Array, isAnyway: (outcome: number) => boolean): number {
  let [own, sound] = [1, 1];
  for (let o = 0; o < row.length; o++) {
    if (!isAnyway(o)) continue;
    own -= at(row, o);
    sound -= at(nothing, o);
  }
  return sound > 0 ? Math.max(0, own) / sound : 0;
}

/** (1 − p)^starts · exp(−rate × hours): the chance that a fault that comes and goes stays away; 0 where none is needed. */
function quietChance(step: Step, prior: Prior, f: number): number {
  const rate = prior.rate[f];
  if (!step.exposure || !rate) return 0;
  const { starts, idleHours } = step.exposure;
  const loadHours = step.exposure.loadHours + (isTriedHandling(step) ? prior.triedFor : 0);
  return (1 - rate.perStart) ** starts * Math.exp(-rate.perLoadHour * loadHours - rate.perIdleHour * idleHours);
}

/** Is something done to the machine and then tried whether it works? */
const isTriedHandling = ({ kind, onRig, outcomes }: Step): boolean =>
  kind !== 'load' && onRig === null && outcomes.some(({ meaning }) => meaning.means === 'works');

/** Where a row follows from what the machine shows: mixed over the groups that this fault may be showing. */
function mixed(model: FaultModel, prior: Prior, s: number, f: number): Float64Array {
  const byGroup = model.byGroup[s];
  const nothing = nth(model.nothing, s);
  const shows = prior.shows[f];
  if (!byGroup || !shows) return nothing;
  const row = new Float64Array(nothing.length);
  GROUPS.forEach((group, g) => {
    for (let o = 0; o < row.length; o++) row[o] = at(row, o) + at(shows, g) * at(byGroup[group], o);
  });
  return row;
}
