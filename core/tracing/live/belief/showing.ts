import { type Condition, STICKY } from './condition.ts';
import type { Hypothesis } from './hypotheses.ts';
import { FIRST, OURS, type PresenceMask, SECOND } from './presence.ts';

/**
 * P(outcome | what shows at once) of one condition. One fault: its own row. Several: the machine is normal only if none of
 * them shows, and what is not normal is shared among the other outcomes as each fault would show them:
 *
 *     P(normal) = Π_i n_i ÷ n_0^(k−1),   P(o) = (1 − P(normal)) · Σ_i P(o | i) ÷ Σ_i (1 − n_i)
 *
 * over the k that show, n_i the chance of the normal outcome with i alone and n_0 that of a sound machine. (A noisy OR:
 * Pearl, Probabilistic Reasoning in Intelligent Systems, 1988, section 4.3, from memory; how what is not normal is shared:
 * common practice, no source.) Asked for many hypotheses in turn; the running sums are its own, so that no list is built.
 */
export class Showing {
  readonly #condition: Condition;
  #count = 0;
  #normal = 1;
  #seen = 0;
  #odd = 0;
  #steady = true;

  constructor(condition: Condition) {
    this.#condition = condition;
  }

  /** P(the outcome asked about), 0..1, for a hypothesis of which so much is there, with these loaners bad (bits). */
  chance({ first, firstMode, second, secondMode }: Hypothesis, mask: PresenceMask, bad = 0): number {
    const { inCircuit, oursNormal, oursSeen } = this.#condition;
    this.#clear();
    if (mask & FIRST && inCircuit[first] === 1) this.#addFault(first, firstMode);
    if (mask & SECOND && inCircuit[second] === 1) this.#addFault(second, secondMode);
    if (mask & OURS) this.#add(oursNormal, oursSeen, true);
    if (bad !== 0) this.#addLoaners(bad);
    const mendedSince = (mask & FIRST) === 0 || (second >= 0 && (mask & SECOND) === 0);
    // Nothing shows because something was mended since: a repeat is then a look at another machine.
    if (mendedSince && this.#count === 0) this.#steady = false;
    return this.#asRepeat(this.#fresh());
  }

  #clear(): void {
    this.#count = 0;
    this.#normal = 1;
    this.#seen = 0;
    this.#odd = 0;
    this.#steady = true;
  }

  #add(normal: number, seen: number, steady: boolean): void {
    const { nothingNormal } = this.#condition;
    this.#normal *= this.#count === 0 ? normal : nothingNormal > 0 ? normal / nothingNormal : 0;
    this.#seen += seen;
    this.#odd += 1 - normal;
    this.#count += 1;
    this.#steady &&= steady;
  }

  /** Shows the same at every repeat: what is steady, or was found last by what is so whether it shows or not. */
  #addFault(fault: number, mode: 0 | 1): void {
    const { normal, seen, held } = this.#condition;
    const place = fault * 2 + mode;
    this.#add(normal[place] ?? NaN, seen[place] ?? NaN, mode === 0 || held[fault] === 1);
  }

  /** A bad loaner shows like the fault it acts as, whatever of the owner's is out. */
  #addLoaners(bad: number): void {
    const { loaners, badNormal, badSeen } = this.#condition;
    for (const { loaner, actsAs } of loaners)
      if (bad & (1 << loaner)) this.#add(badNormal[actsAs] ?? NaN, badSeen[actsAs] ?? NaN, true);
  }

  #fresh(): number {
    const { nothingSeen, isNormal } = this.#condition;
    if (this.#count === 0) return nothingSeen;
    if (this.#count === 1) return this.#seen;
    const normal = Math.min(1, this.#normal);
    if (isNormal) return normal;
    return this.#odd > 0 ? ((1 - normal) * this.#seen) / this.#odd : 0;
  }

  /** A repeat in the same configuration counts as hardly anything new for what is steady. */
  #asRepeat(fresh: number): number {
    const { again } = this.#condition;
    if (again === 'first' || !this.#steady) return fresh;
    return (again === 'same' ? STICKY : 0) + (1 - STICKY) * fresh;
  }
}
