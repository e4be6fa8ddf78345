import type { Bench } from './bench.ts';
import { type Cluster, type Clusters, clustersOf } from './clusters.ts';
import { TIE } from './problem.ts';
import type { Sight } from './sight.ts';

/** Below this share of the belief a cure counts as none: what subtraction leaves behind is not a chance. */
const NO_CHANCE = 1e-13;

/**
 * Chooses by p/c: the chance that a step cures over its minutes, the best set of steps that share an opening counted
 * as one. For a tree of openings the best set is the one with the largest ratio of summed chances to summed minutes
 * (Sidney 1975 and Horn 1972 for 1|outtree|Σ wC, with "open it" as a job of weight zero; Kadane & Simon 1977 for the
 * p/c order itself). Found by Dinkelbach's iteration for ratios, from inner clusters outwards.
 */
export class RatioChooser {
  readonly #bench: Bench;
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
  constructor(bench: Bench, among: Uint8Array = bench.cures, leastRatio = 0) {
    this.#bench = bench;
    this.#among = among;
    this.#steps = Int32Array.from([...among.keys()].filter((s) => among[s] === 1));
    this.#leastRatio = leastRatio;
    this.#reopening = new Float64Array(bench.stepCount);
    this.#cure = new Float64Array(bench.stepCount);
    this.#cost = new Float64Array(bench.stepCount);
  }

  /**
   * The step to do next from this arrangement, or -1 when no step left can cure. `mass` is the belief's total; `done`
   * says 1 for each step no longer to be had.
   */
  first(arrangement: number, sight: Sight, mass: number, done: Uint8Array): number {
    const view = this.#clustersOf(arrangement);
    this.#mass = mass;
    this.#look(sight, done);
    const losing = view.losing.some((s) => (this.#cure[s] as number) > 0);
    if (losing) this.#priceReopening(view, arrangement);
    let best = this.#bestOf(view.open);
    if (losing) this.#reopening.fill(0);
    if (view.clusters.length === 0 || this.#ratio === Number.POSITIVE_INFINITY) return best;
    best = this.#improveBy(view, view.clusters.length, -1, best);
    for (const joint of view.joints) {
      const own = this.#bestJointly(joint.price, joint.steps, this.#ratio);
      if (own <= this.#ratio * (1 + TIE)) continue;
      best = this.#bestOf(joint.steps);
      this.#ratio = own;
    }
    return best;
  }

  /** The ratio that belongs to the step found last. */
  #ratio = 0;

  #clustersOf(arrangement: number): Clusters {
    const known = this.#clusters[arrangement];
    if (known) return known;
    const made = clustersOf(this.#bench, arrangement, this.#among);
    this.#clusters[arrangement] = made;
    if (made.clusters.length > this.#chance.length) {
      this.#chance = new Float64Array(made.clusters.length);
      this.#minutes = new Float64Array(made.clusters.length);
    }
    return made;
  }

  #look({ cure, harm }: Sight, done: Uint8Array): void {
    const { minutes } = this.#bench;
    const least = this.#mass * NO_CHANCE;
    for (let i = 0; i < this.#steps.length; i++) {
      const s = this.#steps[i] as number;
      const chance = cure[s] as number;
      const cost = this.#mass * (minutes[s] as number) + (harm[s] as number);
      const useful = done[s] === 0 && chance > least && chance > this.#leastRatio * cost;
      this.#cure[s] = useful ? chance : 0;
      this.#cost[s] = cost;
    }
  }

  /** A step that closes what other useful steps need open is charged with opening it again. */
  #priceReopening(view: Clusters, arrangement: number): void {
    const { arrangements, problem } = this.#bench;
    const wanted = new Uint8Array(problem.assembly.length);
    for (const s of this.#steps) {
      if ((this.#cure[s] as number) > 0) for (const state of problem.steps[s]?.opens ?? []) wanted[state] = 1;
    }
    for (const s of view.losing) {
      for (const state of arrangements.move(arrangement, s).lost) {
        const { opening = 0, closing = 0 } = problem.assembly[state] ?? {};
        if (wanted[state] === 1) this.#reopening[s] = (this.#reopening[s] as number) + this.#mass * (opening + closing);
      }
    }
  }

  /** The best single step of a list by its own p/c, its ratio into #ratio; -1 when none can cure. */
  #bestOf(steps: readonly number[]): number {
    let best = -1;
    let ratio = 0;
    for (let i = 0; i < steps.length; i++) {
      const s = steps[i] as number;
      const p = this.#cure[s] as number;
      if (p === 0) continue;
      const c = (this.#cost[s] as number) + (this.#reopening[s] as number);
      const own = c > 0 ? p / c : Number.POSITIVE_INFINITY;
      if (best < 0 || own > ratio * (1 + TIE) || (own >= ratio * (1 - TIE) && s < best)) best = s;
      if (own > ratio) ratio = own;
    }
    this.#ratio = ratio;
    return best;
  }

  /** Looks whether opening one of the clusters directly within `parent` beats `best` at #ratio. */
  #improveBy(view: Clusters, before: number, parent: number, best: number): number {
    let first = best;
    for (let at = 0; at < before; at++) {
      if (view.clusters[at]?.within !== parent) continue;
      const ratio = this.#ratio;
      const own = this.#bestBehind(view, at, ratio * (1 - 1e-9));
      if (own === 0 || own < ratio * (1 - TIE)) continue;
      const inside = this.#improveBy(view, at, at, this.#bestOf(view.clusters[at]?.steps ?? []));
      if (first < 0 || own > ratio * (1 + TIE) || inside < first) first = inside;
      this.#ratio = Math.max(own, ratio);
    }
    return first;
  }

  /** The largest ratio of a set behind one closed state if it exceeds `ratio`, else 0. */
  #bestBehind(view: Clusters, root: number, ratio: number): number {
    let found = 0;
    let aim = ratio;
    while (aim < Number.POSITIVE_INFINITY && this.#gainBehind(view, root, aim) > 0) {
      found = (this.#chance[root] as number) / (this.#minutes[root] as number);
      if (found <= aim * (1 + 1e-15)) break;
      aim = found;
    }
    return found;
  }

  /** Σ (chance − ratio × minutes) of the best set behind `root`, inner clusters first. */
  #gainBehind(view: Clusters, root: number, ratio: number): number {
    const chance = this.#chance;
    const minutes = this.#minutes;
    const inside = view.clusters[root]?.inside ?? [];
    for (const at of inside) {
      chance[at] = 0;
      minutes[at] = this.#mass * (view.clusters[at]?.price ?? 0);
    }
    for (const at of inside) {
      const { steps, within } = view.clusters[at] as Cluster;
      for (let i = 0; i < steps.length; i++) {
        const s = steps[i] as number;
        const p = this.#cure[s] as number;
        const c = this.#cost[s] as number;
        if (p === 0 || p - ratio * c <= 0) continue;
        chance[at] = (chance[at] as number) + p;
        minutes[at] = (minutes[at] as number) + c;
      }
      if (at === root) continue;
      if ((chance[at] as number) - ratio * (minutes[at] as number) <= 0) continue;
      chance[within] = (chance[within] as number) + (chance[at] as number);
      minutes[within] = (minutes[within] as number) + (minutes[at] as number);
    }
    return (chance[root] as number) - ratio * (minutes[root] as number);
  }

  /** As #bestBehind, for steps that need two branches open at once. */
  #bestJointly(price: number, steps: readonly number[], ratio: number): number {
    let found = 0;
    let aim = ratio;
    for (;;) {
      let chance = 0;
      let minutes = this.#mass * price;
      for (const s of steps) {
        const p = this.#cure[s] as number;
        const c = this.#cost[s] as number;
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
