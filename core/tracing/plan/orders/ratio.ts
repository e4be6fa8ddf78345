import { addAt, at, nth } from '../../../figures/rows.ts';
import { type Clusters, clustersOf } from '../problem/clusters.ts';
import type { CompiledProblem } from '../problem/compiledProblem.ts';
import { TIE } from '../problem/problem.ts';
import type { PlanState } from '../states/planState.ts';
import type { RatioSums } from './ratioSums.ts';

/** Below this share of the belief a cure counts as none: what subtraction leaves behind is not a chance. */
const NO_CHANCE = 1e-13;

/** A step (-1: none) and the p/c that speaks for it, alone or as the way into the best set behind an opening. */
type Best = { readonly step: number; readonly ratio: number };

/**
 * Chooses by p/c: the chance that a step cures over its minutes, the best set of steps that share an opening counted
 * as one. For a tree of openings the best set is the one with the largest ratio of summed chances to summed minutes
 * (Sidney 1975 and Horn 1972 for 1|outtree|Σ wC, with "open it" as a job of weight zero; Kadane & Simon 1977 for the
 * p/c order itself). Found by Dinkelbach's iteration for ratios, from inner clusters outwards.
 */
export class RatioChooser {
  readonly #compiled: CompiledProblem;
  readonly #clusters: (Clusters | undefined)[] = [];
  /** Chance and minutes of the best set behind each cluster. */
  #chance = new Float64Array(0);
  #minutes = new Float64Array(0);
  readonly #reopening: Float64Array;
  readonly #among: Uint8Array;
  readonly #steps: Int32Array;
  readonly #leastRatio: number;
  #mass = 0;
  /** Per step: mass that it would cure, 0 where it is of no use now; minutes × mass of doing it, without opening and closing. */
  readonly #cure: Float64Array;
  readonly #cost: Float64Array;

  /** `among`: 1 for each step of interest. `leastRatio`: a step whose own p/c is no more than this is left alone. */
  constructor(compiled: CompiledProblem, among: Uint8Array = compiled.cures, leastRatio = 0) {
    this.#compiled = compiled;
    this.#among = among;
    this.#steps = Int32Array.from([...among.keys()].filter((s) => among[s] === 1));
    this.#leastRatio = leastRatio;
    this.#reopening = new Float64Array(compiled.stepCount);
    this.#cure = new Float64Array(compiled.stepCount);
    this.#cost = new Float64Array(compiled.stepCount);
  }

  /**
   * The step to do next, or -1 when no step left can cure. `sums`: of the state's belief, which is not looked at again;
   * `done` says 1 for each step no longer to be had.
   */
  first({ arrangement, mass, done }: Pick<PlanState, 'arrangement' | 'mass' | 'done'>, sums: RatioSums): number {
    const view = this.#clustersOf(arrangement);
    this.#mass = mass;
    this.#look(sums, done);
    const losing = view.losing.some((s) => at(this.#cure, s) > 0);
    if (losing) this.#priceReopening(view, arrangement);
    let best = this.#bestOf(view.open);
    if (losing) this.#reopening.fill(0);
    if (view.clusters.length === 0 || best.ratio === Number.POSITIVE_INFINITY) return best.step;
    best = this.#improveBy(view, view.clusters.length, -1, best);
    for (const joint of view.joints) {
      const ratio = this.#bestJointly(joint.price, joint.steps, best.ratio);
      if (ratio > best.ratio * (1 + TIE)) best = { step: this.#bestOf(joint.steps).step, ratio };
    }
    return best.step;
  }

  #clustersOf(arrangement: number): Clusters {
    const known = this.#clusters[arrangement];
    if (known) return known;
    const made = clustersOf(this.#compiled, arrangement, this.#among);
    this.#clusters[arrangement] = made;
    if (made.clusters.length > this.#chance.length) {
      this.#chance = new Float64Array(made.clusters.length);
      this.#minutes = new Float64Array(made.clusters.length);
    }
    return made;
  }

  #look({ cure, harm }: RatioSums, done: Uint8Array): void {
    const { minutes } = this.#compiled;
    const least = this.#mass * NO_CHANCE;
    for (let i = 0; i < this.#steps.length; i++) {
      const s = this.#steps[i] ?? NaN;
      const chance = cure[s] ?? NaN;
      const cost = this.#mass * (minutes[s] ?? NaN) + (harm[s] ?? NaN);
      const useful = done[s] === 0 && chance > least && chance > this.#leastRatio * cost;
      this.#cure[s] = useful ? chance : 0;
      this.#cost[s] = cost;
    }
  }

  /** A step that closes what other useful steps need open is charged with opening it again. */
  #priceReopening(view: Clusters, arrangement: number): void {
    const { arrangements, problem } = this.#compiled;
    const wanted = new Uint8Array(problem.assembly.length);
    for (const s of this.#steps) {
      if (at(this.#cure, s) > 0) for (const state of problem.steps[s]?.opens ?? []) wanted[state] = 1;
    }
    for (const s of view.losing) {
      for (const state of arrangements.move(arrangement, s).lost) {
        const { opening = 0, closing = 0 } = problem.assembly[state] ?? {};
        if (wanted[state] === 1) addAt(this.#reopening, s, this.#mass * (opening + closing));
      }
    }
  }

  /** The best single step of a list by its own p/c; step -1, ratio 0 when none can cure. */
  #bestOf(steps: readonly number[]): Best {
    let step = -1;
    let ratio = 0;
    for (const s of steps) {
      const p = this.#cure[s] ?? NaN;
      if (p === 0) continue;
      const c = (this.#cost[s] ?? NaN) + (this.#reopening[s] ?? NaN);
      const own = c > 0 ? p / c : Number.POSITIVE_INFINITY;
      if (step < 0 || own > ratio * (1 + TIE) || (own >= ratio * (1 - TIE) && s < step)) step = s;
      if (own > ratio) ratio = own;
    }
    return { step, ratio };
  }

  /** Looks whether opening one of the clusters directly within `parent` beats what was found. */
  #improveBy(view: Clusters, before: number, parent: number, found: Best): Best {
    let { step, ratio } = found;
    for (let n = 0; n < before; n++) {
      const cluster = view.clusters[n];
      if (cluster?.within !== parent) continue;
      const own = this.#bestBehind(view, n, ratio * (1 - 1e-9));
      if (own === 0 || own < ratio * (1 - TIE)) continue;
      const inside = this.#improveBy(view, n, n, this.#bestOf(cluster.steps)).step;
      if (step < 0 || own > ratio * (1 + TIE) || inside < step) step = inside;
      ratio = Math.max(own, ratio);
    }
    return { step, ratio };
  }

  /** The largest ratio of a set behind one closed state if it exceeds `ratio`, else 0. */
  #bestBehind(view: Clusters, root: number, ratio: number): number {
    let found = 0;
    let aim = ratio;
    while (aim < Number.POSITIVE_INFINITY && this.#gainBehind(view, root, aim) > 0) {
      found = at(this.#chance, root) / at(this.#minutes, root);
      if (found <= aim * (1 + 1e-15)) break;
      aim = found;
    }
    return found;
  }

  /** Σ (chance − ratio × minutes) of the best set behind `root`, inner clusters first. */
  #gainBehind(view: Clusters, root: number, ratio: number): number {
    const chance = this.#chance;
    const minutes = this.#minutes;
    const { inside } = nth(view.clusters, root);
    for (const n of inside) {
      chance[n] = 0;
      minutes[n] = this.#mass * (view.clusters[n]?.price ?? NaN);
    }
    for (const n of inside) {
      const cluster = view.clusters[n];
      if (!cluster) continue;
      const { steps, within } = cluster;
      for (const s of steps) {
        const p = this.#cure[s] ?? NaN;
        const c = this.#cost[s] ?? NaN;
        if (p === 0 || p - ratio * c <= 0) continue;
        addAt(chance, n, p);
        addAt(minutes, n, c);
      }
      if (n === root || (chance[n] ?? NaN) - ratio * (minutes[n] ?? NaN) <= 0) continue;
      addAt(chance, within, chance[n] ?? NaN);
      addAt(minutes, within, minutes[n] ?? NaN);
    }
    return (chance[root] ?? NaN) - ratio * (minutes[root] ?? NaN);
  }

  /** As #bestBehind, for steps that need two branches open at once. */
  #bestJointly(price: number, steps: readonly number[], ratio: number): number {
    let found = 0;
    let aim = ratio;
    for (;;) {
      let chance = 0;
      let minutes = this.#mass * price;
      for (const s of steps) {
        const p = at(this.#cure, s);
        const c = at(this.#cost, s);
        if (p === 0 || p - aim * c <= 0) continue;
        chance += p;
        minutes += c;
      }
      if (chance - aim * minutes <= 0) return found;
      found = chance / minutes;
      if (found <= aim * (1 + 1e-15)) return found;
      aim = found;
    }
  }
}
