import { at } from '../../../figures/rows.ts';
import { faultNumber, MADE_BY_US } from '../model/special.ts';
import type { Belief, FaultModel, Suspect, TracingCase } from '../types.ts';
import { contradictionOf } from './contradiction.ts';
import { massOf, type Posterior, posteriorOf } from './posterior.ts';
import { FIRST, OURS, PRESENCES, placeOf, SECOND } from './presence.ts';

/** Pairs shown: what one list of suspects holds. */
const MOST_PAIRS = 5;

/**
 * What is believed after all that was told, seen and done: every fault with its chance of being there, the likeliest
 * pairs, how likely each loaner is bad, the mass of pairs not carried, and whether the log contradicts itself.
 */
export function belief(model: FaultModel, tracing: TracingCase, pairs = true): Belief {
  const posterior = posteriorOf(model, tracing, pairs);
  return {
    suspects: suspectsOf(model, posterior),
    pairs: likeliestPairs(model, posterior),
    loaners: posterior.loaners,
    droppedMass: posterior.dropped,
    logLikelihood: posterior.logLikelihood,
    contradiction: contradictionOf(model, tracing, posterior),
  };
}

/** Every fault's chance of being there now, and of having been there and mended; likeliest first, file order at ties. */
export function suspectsOf(model: FaultModel, posterior: Posterior): readonly Suspect[] {
  const there = new Float64Array(model.faults.length);
  const mended = new Float64Array(model.faults.length);
  const comes = new Float64Array(model.faults.length);
  let ours = 0;
  const add = (fault: number, mode: number, isThere: boolean, p: number): void => {
    const into = isThere ? there : mended;
    into[fault] = at(into, fault) + p;
    if (mode === 1) comes[fault] = at(comes, fault) + p;
  };
  for (const [h, { first, firstMode, second, secondMode }] of posterior.hypotheses.entries()) {
    for (let state = 0; state < PRESENCES; state++) {
      const p = at(posterior.mass, placeOf(h, state));
      if (p === 0) continue;
      if (state & OURS) ours += p;
      if (first >= 0) add(first, firstMode, (state & FIRST) !== 0, p);
      if (second >= 0) add(second, secondMode, (state & SECOND) !== 0, p);
    }
  }
  there[faultNumber(model, MADE_BY_US)] = ours;
  return model.faults
    .map((fault, f): Suspect => {
      const p = at(there, f);
      const all = p + at(mended, f);
      return {
        fault: fault.id,
        p,
        mended: at(mended, f),
        comesAndGoes: all > 0 ? at(comes, f) / all : 0,
      };
    })
    .sort((a, b) => b.p + b.mended - a.p - a.mended);
}

function likeliestPairs(model: FaultModel, posterior: Posterior): Belief['pairs'] {
  return posterior.hypotheses
    .map((hypothesis, h) => ({ hypothesis, p: massOf(posterior, h) }))
    .filter((each) => each.hypothesis.second >= 0)
    .sort((a, b) => b.p - a.p)
    .slice(0, MOST_PAIRS)
    .map(({ hypothesis, p }) => ({
      faults: [model.faults[hypothesis.first]?.id ?? '', model.faults[hypothesis.second]?.id ?? ''] as const,
      p,
    }));
}
