import type { AssemblyState, Step } from './problem.ts';

/** Where one step leads from one arrangement. */
export type AssemblyMove = {
  /** The arrangement (number) in which the step is done. */
  readonly to: number;
  /** Minutes of the opening and closing moves themselves. */
  readonly minutes: number;
  /**
   * Opening *and* later closing minutes of what is opened now. All that is open is closed at the end whatever happens,
   * so charging both at the opening and nothing at the closing gives the same total and frees plans from the end.
   */
  readonly price: number;
  /** States that are open and have to be closed for the step. */
  readonly lost: readonly number[];
  /** States that are closed and have to be opened for the step. */
  readonly opened: readonly number[];
};

/**
 * The ways a machine can stand open, numbered as they are met (0: all closed), with the cheapest moves between them.
 * Only required moves are made: opening early or closing early never saves a minute, as each is paid when needed.
 */
export class Arrangements {
  readonly #states: readonly AssemblyState[];
  readonly #steps: readonly Step[];
  readonly #open: Uint8Array[] = [];
  readonly #moves: (AssemblyMove | undefined)[][] = [];
  readonly #numbers = new Map<string, number>();

  constructor(states: readonly AssemblyState[], steps: readonly Step[]) {
    this.#states = states;
    this.#steps = steps;
    this.#numberOf(new Uint8Array(states.length));
  }

  /** How many arrangements have been met so far. */
  get size(): number {
    return this.#open.length;
  }

  /** The number of the arrangement in which exactly these states (indices) and all they lie within are open. */
  withOpen(open: Iterable<number>): number {
    const flags = new Uint8Array(this.#states.length);
    for (const each of open) {
      for (let at = each; at >= 0; at = this.#states[at]?.within ?? -1) flags[at] = 1;
    }
    return this.#numberOf(flags);
  }

  /** Does this state (its index) stand open in the arrangement of this number? */
  isOpen(arrangement: number, state: number): boolean {
    return this.#open[arrangement]?.[state] === 1;
  }

  /** Minutes to close all that is open. */
  closingAll(arrangement: number): number {
    const open = this.#open[arrangement];
    return this.#states.reduce((sum, state, at) => (open?.[at] === 1 ? sum + state.closing : sum), 0);
  }

  /** The cheapest moves that make the step possible. */
  move(arrangement: number, step: number): AssemblyMove {
    const known = this.#moves[arrangement]?.[step];
    return known ?? this.#findMove(arrangement, step);
  }

  #findMove(arrangement: number, stepAt: number): AssemblyMove {
    const open = this.#open[arrangement];
    const step = this.#steps[stepAt];
    const row = this.#moves[arrangement];
    if (!open || !step || !row) throw new Error(`no arrangement ${arrangement} or step ${stepAt}`);
    const opened = step.opens.filter((at) => open[at] === 0);
    const lost = step.closes.filter((at) => open[at] === 1);
    const stays = opened.length === 0 && lost.length === 0;
    const flags = stays ? open : open.slice();
    let minutes = 0;
    let price = 0;
    for (const at of lost) {
      flags[at] = 0;
      minutes += this.#states[at]?.closing ?? 0;
    }
    for (const at of opened) {
      const state = this.#states[at];
      flags[at] = 1;
      minutes += state?.opening ?? 0;
      price += (state?.opening ?? 0) + (state?.closing ?? 0);
    }
    const move: AssemblyMove = { to: stays ? arrangement : this.#numberOf(flags), minutes, price, lost, opened };
    row[stepAt] = move;
    return move;
  }

  #numberOf(flags: Uint8Array): number {
    const key = flags.join('');
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    const number = this.#open.length;
    this.#numbers.set(key, number);
    this.#open.push(flags);
    this.#moves.push([]);
    return number;
  }
}
