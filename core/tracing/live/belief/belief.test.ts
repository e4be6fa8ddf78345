import { describe, expect, it } from 'vitest';
import { randomTracing } from '../../../../tests/builders/randomTracing.ts';
import { afterDoing, aTracingCase } from '../../../../tests/builders/tracingCase.ts';
import { GROUPS } from '../groups.ts';
import { standardModel } from '../loading/standardModel.ts';
import { CIRCUITS } from '../model/circuits.ts';
import { knownStep } from '../model/special.ts';
import { openTracing } from '../openTracing.ts';
import type { FaultModel, LoggedStep, TracingCase } from '../types.ts';
import { belief } from './belief.ts';
import { hypothesesOf } from './hypotheses.ts';
import { posteriorOf } from './posterior.ts';
import { type Prior, priorOf } from './prior.ts';

const model = standardModel();

// Plain enumeration, written apart from the filter: every hidden event (mended or not, something of ours or not) of
// every step is tried out by recursion, every hypothesis and every loaner's flag one by one. Slow and simple.

type Fact = { readonly fault: number; readonly comes: boolean };

const bits = (names: readonly string[]) => new Set(names);

function rowFor(m: FaultModel, prior: Prior, s: number, fact: Fact): readonly number[] {
  const nothing = Array.from(m.nothing[s] ?? []);
  const step = m.steps[s];
  let row = m.rows[s]?.[fact.fault] ? Array.from(m.rows[s]?.[fact.fault] ?? []) : null;
  const groupRows = m.byGroup[s];
  if (!row && groupRows) {
    row = nothing.map((_, o) =>
      GROUPS.reduce((sum, group, g) => sum + (prior.shows[fact.fault]?.[g] ?? 0) * (groupRows[group][o] ?? 0), 0),
    );
  }
  const own = row ?? nothing;
  const rate = prior.rate[fact.fault];
  if (!fact.comes || !step?.exposure || !rate) return own;
  const { starts, idleHours } = step.exposure;
  // What is done to a machine that fails only under load is tried under that load.
  const tried = step.kind !== 'load' && step.onRig === null && step.outcomes.some((o) => o.meaning.means === 'works');
  const loadHours = step.exposure.loadHours + (tried ? prior.triedFor : 0);
  const quiet =
    (1 - rate.perStart) ** starts * Math.exp(-rate.perLoadHour * loadHours) * Math.exp(-rate.perIdleHour * idleHours);
  const id = m.faults[fact.fault]?.id ?? '';
  const anyway = (o: number) => step.outcomes[o]?.whileQuiet.includes(id) === true;
  const sum = (row: readonly number[], which: (o: number) => boolean) =>
    row.reduce((all, p, o) => (which(o) ? all + p : all), 0);
  const rest = sum(own, (o) => !anyway(o)) / sum(nothing, (o) => !anyway(o));
  return own.map((p, o) => quiet * (anyway(o) ? p : rest * (nothing[o] ?? 0)) + (1 - quiet) * p);
}

function combined(m: FaultModel, s: number, rows: readonly (readonly number[])[], outcome: number): number {
  const nothing = Array.from(m.nothing[s] ?? []);
  const normal = m.steps[s]?.normal ?? 0;
  if (rows.length === 0) return nothing[outcome] ?? 0;
  if (rows.length === 1) return rows[0]?.[outcome] ?? 0;
  const sound = nothing[normal] ?? 0;
  const all = Math.min(1, rows.reduce((p, row) => p * (row[normal] ?? 0), 1) / sound ** (rows.length - 1));
  if (outcome === normal) return all;
  const odd = rows.reduce((sum, row) => sum + 1 - (row[normal] ?? 0), 0);
  return odd > 0 ? ((1 - all) * rows.reduce((sum, row) => sum + (row[outcome] ?? 0), 0)) / odd : 0;
}

/** Which circuits are out before and while each logged step is looked at, by replaying the log with sets. */
function looks(m: FaultModel, log: readonly LoggedStep[]) {
  const forGood = new Set<string>(['home']);
  let left = new Set<string>();
  return log.map((entry) => {
    const step = knownStep(m, entry.step);
    if (!step) throw new Error(entry.step);
    const before = new Set([
      ...forGood,
      ...[...left].filter((circuit) => (entry.leftOut as readonly string[]).includes(circuit)),
    ]);
    const look = step.onRig
      ? bits(CIRCUITS.filter((circuit) => !step.onRig?.includes(circuit)))
      : new Set(
          [...before, ...step.takesOut].filter((circuit) => !(step.bringsIn as readonly string[]).includes(circuit)),
        );
    if (step.staysOut) for (const circuit of step.takesOut) forGood.add(circuit);
    left = bits(entry.leftOut);
    return { before, look };
  });
}

/** What each entry's handlings may still mend, before the look and after: one done before mends a tenth as often. */
function mendings(m: FaultModel, log: readonly LoggedStep[]) {
  const done = new Set<string>();
  return log.map((entry) => {
    const step = knownStep(m, entry.step);
    if (!step) throw new Error(entry.step);
    const by = (handlings: readonly string[]) => (fault: string) =>
      1 -
      [...new Set(handlings)].reduce(
        (none, id) => none * (1 - (m.handlings[id]?.[fault] ?? 0) * (before.has(id) ? 0.1 : 1)),
        1,
      );
    const before = new Set(done);
    const own = [...step.does, ...step.alsoDoes];
    for (const id of [...own, ...step.putBackDoes]) done.add(id);
    return { before: by(own), after: by(step.putBackDoes) };
  });
}

function enumerate(m: FaultModel, tracing: TracingCase, pairs: boolean) {
  const prior = priorOf(m, tracing);
  const { list } = hypothesesOf(m, prior, pairs);
  const log = tracing.log;
  const where = looks(m, log);
  const used = [...new Map(log.flatMap((entry) => entry.loaners).map((one) => [one.id, one])).values()];
  const there = new Map<string, number>();
  const mended = new Map<string, number>();
  const bad = new Map<string, number>();
  let total = 0;
  const opened = openings(m, log);
  const mend = mendings(m, log);
  const rows = new Map<string, readonly number[]>();
  const row = (s: number, fact: Fact): readonly number[] => {
    const key = `${s} ${fact.fault} ${fact.comes}`;
    const known = rows.get(key) ?? rowFor(m, prior, s, fact);
    rows.set(key, known);
    return known;
  };
  const lastSame = log.map((entry, k) =>
    log
      .slice(0, k)
      .findLastIndex(
        (one, at) =>
          one.step === entry.step &&
          [...(where[at]?.look ?? [])].sort().join() === [...(where[k]?.look ?? [])].sort().join(),
      ),
  );
  for (let flags = 0; flags < 2 ** used.length; flags++) {
    const isBad = (id: string) => Math.floor(flags / 2 ** used.findIndex((one) => one.id === id)) % 2 === 1;
    if (used.filter((one) => isBad(one.id)).length > 2) continue;
    const weight = used.reduce((p, one) => {
      const chance = m.badLoaner[one.kind]?.chance[one.standing] ?? 0;
      return p * (isBad(one.id) ? chance : 1 - chance);
    }, 1);
    for (const each of list) {
      const facts: Fact[] = [{ fault: each.first, comes: each.firstMode === 1 }];
      if (each.second >= 0) facts.push({ fault: each.second, comes: each.secondMode === 1 });
      const tell = (p: number, alive: readonly boolean[], ours: boolean) => {
        total += p;
        for (const one of used) if (isBad(one.id)) bad.set(one.id, (bad.get(one.id) ?? 0) + p);
        facts.forEach((fact, n) => {
          const id = m.faults[fact.fault]?.id ?? '';
          const into = alive[n] ? there : mended;
          into.set(id, (into.get(id) ?? 0) + p);
        });
        if (ours) there.set('made-by-us', (there.get('made-by-us') ?? 0) + p);
      };
      const go = (k: number, p: number, alive: readonly boolean[], ours: boolean): void => {
        if (p === 0) return;
        const entry = log[k];
        if (!entry) {
          tell(p, alive, ours);
          return;
        }
        const s = m.stepIndex.get(entry.step) as number;
        const step = m.steps[s];
        const outcome = step?.outcomes.findIndex((one) => one.id === entry.outcome) ?? -1;
        if (!step) throw new Error(entry.step);
        if (step.id === 'watch-start') {
          // Only the assembly moves on; what was seen is in the prior.
          go(k + 1, p, alive, ours);
          return;
        }
        const chances = (of: ((fault: string) => number) | undefined) =>
          facts.map((fact) => of?.(m.faults[fact.fault]?.id ?? '') ?? 0);
        branch(alive, chances(mend[k]?.before), (afterMend, p1) => {
          branch([ours], [step.mends['made-by-us'] ?? 0], ([left], p2) => {
            for (const comes of [false, true]) {
              const arise = opened[k] ?? 0;
              if (comes && left) continue;
              const p3 = left ? 1 : comes ? arise : 1 - arise;
              const oursNow = left === true || comes;
              const shows: { row: readonly number[]; steady: boolean; fault: number | null }[] = [];
              facts.forEach((fact, n) => {
                const sits: readonly string[] = m.faults[fact.fault]?.circuits ?? [];
                if (!afterMend[n] || m.faults[fact.fault]?.id === 'nothing-wrong') return;
                const out = (set: ReadonlySet<string> | undefined) => sits.some((circuit) => set?.has(circuit));
                const states = m.listed[s]?.[fact.fault] === 1 && !step.onRig && !out(where[k]?.before);
                const held = step.outcomes
                  .find((one) => one.id === log[lastSame[k] ?? -1]?.outcome)
                  ?.whileQuiet.includes(m.faults[fact.fault]?.id ?? '');
                if (states || !out(where[k]?.look))
                  shows.push({ row: row(s, fact), steady: !fact.comes || held === true, fault: fact.fault });
              });
              if (oursNow) shows.push({ row: Array.from(m.ours[s] ?? []), steady: true, fault: null });
              for (const one of entry.loaners)
                if (isBad(one.id)) {
                  const fault = m.faultIndex.get(m.badLoaner[one.kind]?.actsAs ?? '') as number;
                  shows.push({ row: row(s, { fault, comes: false }), steady: true, fault });
                }
              const fresh = combined(
                m,
                s,
                shows.map((one) => one.row),
                outcome,
              );
              const last = lastSame[k] ?? -1;
              const mendedAll = shows.length === 0 && afterMend.some((alive) => !alive);
              const again = last >= 0 && !mendedAll && shows.every((one) => one.steady);
              const sticky = (p: number, same: boolean) => (again ? (same ? 0.95 : 0) + 0.05 * p : p);
              const q =
                step.places.length === 0
                  ? sticky(fresh, log[last]?.outcome === entry.outcome)
                  : placesSeen(m, s, shows, entry).reduce(
                      (all, { finding, p }) =>
                        all * sticky(p, log[last] !== undefined && has(log[last], finding) === has(entry, finding)),
                      1,
                    );
              branch(afterMend, chances(mend[k]?.after), (afterBack, p4) => {
                go(k + 1, p * p1 * p2 * p3 * q * p4, afterBack, oursNow);
              });
            }
          });
        });
      };
      go(
        0,
        weight * each.prior,
        facts.map(() => true),
        false,
      );
    }
  }
  return {
    there: (id: string) => (there.get(id) ?? 0) / total,
    mended: (id: string) => (mended.get(id) ?? 0) / total,
    bad: (id: string) => (bad.get(id) ?? 0) / total,
    log: Math.log(total),
  };
}

const has = ({ outcome, also = [] }: LoggedStep, finding: string) => [outcome, ...also].includes(finding);

/** Of a look at several places: each finding's chance to be as it was logged, one place apart from the other. */
const placesSeen = (
  m: FaultModel,
  s: number,
  shows: readonly { readonly fault: number | null }[],
  entry: LoggedStep,
): readonly { readonly finding: string; readonly p: number }[] =>
  (m.findings[s] ?? []).map(({ outcome: finding, rows, nothing }) => {
    const sound = nothing[0] ?? 0;
    const absent = (fault: number | null) => (fault === null ? sound : (rows[fault]?.[0] ?? 0));
    const none = shows.reduce((p, { fault }) => (p * absent(fault)) / sound, sound);
    return { finding, p: has(entry, finding) ? 1 - none : none };
  });

/** Every way that each of these may or may not go, with its chance. */
function branch(
  alive: readonly boolean[],
  chances: readonly number[],
  then: (alive: readonly boolean[], p: number) => void,
): void {
  const ways = (n: number, sofar: readonly boolean[], p: number): void => {
    if (n === alive.length) {
      then(sofar, p);
      return;
    }
    const chance = alive[n] ? (chances[n] ?? 0) : 0;
    if (chance > 0) ways(n + 1, [...sofar, false], p * chance);
    if (chance < 1) ways(n + 1, [...sofar, alive[n] as boolean], p * (1 - chance));
  };
  ways(0, [], 1);
}

/** Chance that opening for each step leaves something of ours: the states it opens first, and all they lie within. */
function openings(m: FaultModel, log: readonly LoggedStep[]): readonly number[] {
  const open = new Set<string>();
  return log.map((entry) => {
    let clean = 1;
    const want = (id: string): void => {
      const state = m.states.find((one) => one.id === id);
      if (!state) return;
      if (state.within) want(state.within);
      if (!open.has(id)) clean *= 1 - state.ours;
      open.add(id);
    };
    for (const id of knownStep(m, entry.step)?.open ?? []) want(id);
    return 1 - clean;
  });
}

const randomCase = (seed: number, steps: number): TracingCase => randomTracing(model, seed, steps);

function compare(tracing: TracingCase, pairs: boolean): void {
  const fast = belief(model, tracing, pairs);
  const slow = enumerate(model, tracing, pairs);
  for (const suspect of fast.suspects) {
    expect(Math.abs(suspect.p - slow.there(suspect.fault))).toBeLessThan(1e-9);
    expect(Math.abs(suspect.mended - slow.mended(suspect.fault))).toBeLessThan(1e-9);
  }
  for (const one of fast.loaners) expect(Math.abs(one.bad - slow.bad(one.id))).toBeLessThan(1e-9);
  expect(Math.abs(fast.logLikelihood - slow.log)).toBeLessThan(1e-9);
}

describe('the belief equals plain enumeration', () => {
  it('on 500 random logs with one fault present', () => {
    for (let seed = 1; seed <= 500; seed++) compare(randomCase(seed, 1 + (seed % 5)), false);
  }, 120_000);
  it('on 60 random logs with one or two faults present', () => {
    for (let seed = 1001; seed <= 1060; seed++) compare(randomCase(seed, 1 + (seed % 3)), true);
  }, 120_000);
});

describe('the belief', () => {
  it('is the same for a bench followed step by step, corrected on the way, as for a log opened whole', () => {
    for (let seed = 3001; seed <= 3004; seed++) {
      const { log, ...rest } = randomCase(seed, 7);
      const after = (entries: readonly LoggedStep[]) => posteriorOf(model, { ...rest, log: entries });
      log.forEach((entry, k) => {
        const outcomes = knownStep(model, entry.step)?.outcomes ?? [];
        for (const { id } of outcomes) after([...log.slice(0, k), { ...entry, outcome: id }]);
        after([...log.slice(0, k), { ...entry, struck: true }]);
        after([...log.slice(0, k), { ...entry, loaners: [] }]);
        after([...log.slice(0, k), { ...entry, leftOut: [] }, ...log.slice(k + 1, k + 2)]);
        after(log.slice(0, k + 1));
      });
      const whole = posteriorOf(openTracing(model), { ...rest, log });
      const { mass, loaners } = after(log);
      expect({ mass, loaners }).toEqual({ mass: whole.mass, loaners: whole.loaners });
    }
  }, 60_000);

  it('never divides by nothing, whatever was logged', () => {
    for (let seed = 2001; seed <= 2040; seed++) {
      const { suspects, logLikelihood } = belief(model, randomCase(seed, 12));
      expect(Number.isFinite(logLikelihood)).toBe(true);
      expect(suspects.every((one) => Number.isFinite(one.p) && one.p >= 0 && one.p <= 1 + 1e-12)).toBe(true);
    }
  }, 60_000);

  it('takes a struck step as never done', () => {
    const before = aTracingCase();
    const done = afterDoing(model, before, 'dimm-press', 'works');
    const struck = { ...done, log: done.log.map((entry) => ({ ...entry, struck: true })) };
    expect(belief(model, struck).suspects).toEqual(belief(model, before).suspects);
  });

  it('learns nothing of the DIMMs from a start with ours in their place', () => {
    const ours = afterDoing(model, aTracingCase(), 'dimm-loan', 'works', { stays: true });
    const quiet = afterDoing(model, ours, 'starts-five', 'works', { leftOut: ['dimm'] });
    const p = (tracing: TracingCase, id: string) =>
      belief(model, tracing).suspects.find((one) => one.fault === id)?.p ?? 0;
    expect(p(ours, 'dimm-dead')).toBeGreaterThan(p(aTracingCase(), 'dimm-dead'));
    expect(p(quiet, 'dimm-dead') / p(ours, 'dimm-dead')).toBeGreaterThan(0.98);
  });

  it('weighs a quiet hour by the rate that was told', () => {
    const told = { symptoms: ['shuts-off'], changed: [], often: ['daily'], onlyWhen: [], rate: null };
    const tracing = aTracingCase({ told, seen: ['fine-here'] });
    const seldom = aTracingCase({ told: { ...told, often: ['rarely'] }, seen: ['fine-here'] });
    const falls = (one: TracingCase) => {
      const p = (each: TracingCase) =>
        belief(model, each).suspects.find((suspect) => suspect.fault === 'board-crack')?.p ?? 0;
      return p(afterDoing(model, one, 'soak-idle', 'quiet')) / p(one);
    };
    expect(falls(tracing)).toBeLessThan(falls(seldom));
  });

  it('reports a log that contradicts itself and names the two entries', () => {
    let tracing = aTracingCase({ told: { ...aTracingCase().told, symptoms: ['no-reaction'] }, seen: ['no-reaction'] });
    tracing = afterDoing(model, tracing, 'meas-standby', 'within');
    tracing = afterDoing(model, tracing, 'supply-alone', 'dead');
    tracing = afterDoing(model, tracing, 'supply-beside', 'same');
    tracing = afterDoing(model, tracing, 'wall-watts', 'standby-only');
    tracing = afterDoing(model, tracing, 'pins-start', 'works');
    tracing = afterDoing(model, tracing, 'rig-supply', 'works-there');
    tracing = afterDoing(model, tracing, 'meas-rails', 'outside');
    const { contradiction } = belief(model, tracing);
    expect(contradiction?.tail).toBeLessThan(1 / 1000);
    expect(contradiction?.entries).toContain('e2');
    const fair = afterDoing(model, afterDoing(model, aTracingCase(), 'meas-rails', 'within'), 'read-code', 'memory');
    expect(belief(model, fair).contradiction).toBeNull();
  });
});
