import { nth } from '../../../figures/rows.ts';
import { WATCH_START } from '../../live/model/special.ts';
import type { FaultModel, Step, TracingCase } from '../../live/types.ts';
import { partsUsed } from '../bench/logged.ts';
import type { BenchCase } from '../form/benchCase.ts';
import { outcomesNamed, stepNamed } from '../ids/names.ts';
import { ASK_OWNER, asksForAWord } from '../judge/logHas.ts';
import { likeliestOutcome, onSoundMachine, truthOf, unchanged } from './truth.ts';

/** One mend from here on has at least an even chance where a case does not say what mends its machine. */
const MENDS_FROM = 0.5;

/** A case's machine on the bench: what each step shows, in order, and whether it was mended by then. */
export class Answerer {
  readonly #model: FaultModel;
  readonly #case: BenchCase;
  readonly #truth: ReturnType<typeof truthOf>;
  readonly #asked = new Map<string, number>();
  readonly #done = new Set<string>();
  #mended = false;

  constructor(model: FaultModel, bench: BenchCase) {
    this.#model = model;
    this.#case = bench;
    this.#truth = truthOf(model, bench);
    for (const entry of bench.before) {
      const [id = '', outcome = ''] = entry.split(':');
      this.#doneWith(id, outcome);
    }
  }

  /** Does it work again by what was done so far? */
  get mended(): boolean {
    return this.#mended;
  }

  /**
   * Does a step to the machine: what comes out, and what it leaves of the machine.
   * @throws {Error} for a step that the model does not know.
   */
  does(tracing: TracingCase, id: string): string {
    const named = stepNamed(this.#model, id);
    if (named.is !== 'here') throw new Error(`no step ${id}`);
    const { step } = named;
    const outcome = this.#mended ? this.#afterwards(step) : this.#shows(tracing, step);
    this.#doneWith(id, outcome);
    return outcome;
  }

  #shows(tracing: TracingCase, step: Step): string {
    if (step.id === WATCH_START) return this.#known(step, [this.#case.firstStart]) ?? onSoundMachine(step);
    // The last of several that mend only together shows it, whatever is written for it alone.
    if (this.#completes(step)) return onSoundMachine(step);
    const { mended: _mended, afterwards: _afterwards, ...answers } = this.#case.answers;
    const own = this.#known(step, this.#named(answers, step.id) ?? this.#said(answers, step) ?? []);
    if (own !== null) return own;
    if (this.#mendsNow(step) || this.#soundPartIn(tracing, step)) return onSoundMachine(step);
    if (step.kind === 'swap' && this.#deadIn(tracing, step)) return unchanged(step);
    return this.#truth ? likeliestOutcome(this.#model, tracing, step, this.#truth) : unchanged(step);
  }

  #afterwards(step: Step): string {
    return this.#known(step, this.#named(this.#case.answers.afterwards ?? {}, step.id) ?? []) ?? onSoundMachine(step);
  }

  /** Answers stand under the case's own id of a step. */
  #named<T>(answers: { readonly [id: string]: T | undefined }, step: string): T | undefined {
    const id = Object.keys(answers).find((one) => {
      const named = stepNamed(this.#model, one);
      return named.is === 'here' && named.step.id === step;
    });
    return id === undefined ? undefined : answers[id];
  }

  /** What the owner says to whatever word they are asked for, where a case has one answer to all of it. */
  #said(answers: { readonly [id: string]: readonly string[] | undefined }, step: Step): readonly string[] | undefined {
    return asksForAWord(this.#model, step.id) ? answers[ASK_OWNER] : undefined;
  }

  /** The answer whose turn it is, as the model calls it. */
  #known(step: Step, answers: readonly string[]): string | null {
    if (answers.length === 0) return null;
    const at = this.#asked.get(step.id) ?? 0;
    this.#asked.set(step.id, at + 1);
    const answer = nth(answers, Math.min(at, answers.length - 1));
    const id = step.id === WATCH_START ? step.id : (this.#idIn(step.id) ?? step.id);
    return outcomesNamed(this.#model, id, answer)?.join('+') ?? null;
  }

  #idIn(step: string): string | undefined {
    return [...Object.keys(this.#case.answers), ...Object.keys(this.#case.answers.afterwards ?? {})].find((one) => {
      const named = stepNamed(this.#model, one);
      return named.is === 'here' && named.step.id === step;
    });
  }

  /** Would doing this step now leave the machine sound? */
  #mendsNow(step: Step): boolean {
    const { mended } = this.#case.answers;
    if (mended === undefined) return this.#mendsByModel(step);
    return mended.some((one) => {
      const all = typeof one === 'string' ? [one] : one;
      const others = all.filter((id) => !this.#is(id, step.id));
      return others.length < all.length && others.every((id) => this.#done.has(this.#idOf(id)));
    });
  }

  /** Is it the last of a list of steps that mend only all together? */
  #completes(step: Step): boolean {
    return (this.#case.answers.mended ?? []).some((one) => {
      if (typeof one === 'string' || one.length < 2) return false;
      const others = one.filter((id) => !this.#is(id, step.id));
      return others.length < one.length && others.every((id) => this.#done.has(this.#idOf(id)));
    });
  }

  #mendsByModel(step: Step): boolean {
    const truth = this.#truth;
    if (!truth || truth.second >= 0) return false;
    return (step.mends[this.#model.faults[truth.first]?.id ?? ''] ?? 0) >= MENDS_FROM;
  }

  /** Is one of ours in that is known to make it work: "part:supply"? */
  #soundPartIn(tracing: TracingCase, step: Step): boolean {
    const kinds = (this.#case.answers.mended ?? []).flatMap((one) =>
      typeof one === 'string' && one.startsWith('part:') ? [one.slice('part:'.length)] : [],
    );
    const { borrows, orders } = step.handling;
    if (step.onRig !== null) return false;
    if (orders && kinds.includes(orders)) return true;
    return borrows !== null && kinds.includes(borrows) && step.kind === 'swap' && !this.#deadIn(tracing, step);
  }

  #deadIn(tracing: TracingCase, step: Step): boolean {
    const dead = this.#case.wall === 'full' ? [] : this.#case.wall.dead;
    return partsUsed(this.#model, tracing, step).some(({ id }) => dead.includes(id));
  }

  #idOf(id: string): string {
    const named = stepNamed(this.#model, id);
    return named.is === 'here' ? named.step.id : id;
  }

  #is(id: string, step: string): boolean {
    return this.#idOf(id) === step;
  }

  #doneWith(id: string, outcome: string): void {
    const named = stepNamed(this.#model, id);
    if (named.is === 'here' && !this.#mended) this.#mended = this.#mendsNow(named.step) && outcome !== '';
    this.#done.add(this.#idOf(id));
  }
}
