import type { PlanRefusal, PlanRefusalName } from './planRefusal.ts';

/** Anything that can say "stop": an AbortSignal, or a flag in memory that another thread sets. */
export type Cancel = { readonly aborted: boolean };

/** Unwinds a plan that is to be given up; caught at the public door and turned into its refusal. */
export class Halt extends Error {
  readonly refusal: PlanRefusal;

  constructor(refused: PlanRefusalName, facts: Readonly<Record<string, unknown>> = {}) {
    super(refused);
    this.refusal = { ...facts, refused };
  }
}

/** How much work is done between two looks at the cancel flag (about a millisecond). */
const BETWEEN_LOOKS = 1_000_000;

/** Counts work in multiplications, stops at a stated limit and looks now and then whether anyone wants to stop. */
export class Effort {
  readonly #cancel: Cancel | undefined;
  readonly #limit: number;
  readonly #beyond: Readonly<Record<string, unknown>>;
  #sinceLook = BETWEEN_LOOKS;
  spent = 0;

  /** `beyond`: the facts of the refusal `too-much-work` when more than `limit` is spent. */
  constructor(cancel?: Cancel, limit = Number.POSITIVE_INFINITY, beyond: Readonly<Record<string, unknown>> = {}) {
    this.#cancel = cancel;
    this.#limit = limit;
    this.#beyond = beyond;
  }

  /**
   * Is it to be given up? Where a piece of work is done, however little it was.
   * @throws {Halt} `cancelled`, when somebody wants it to stop.
   */
  look(): void {
    if (this.#cancel?.aborted) throw new Halt('cancelled');
  }

  /**
   * Counts so many multiplications more.
   * @throws {Halt} `cancelled` now and then, as `look` does; `too-much-work` beyond the limit.
   */
  spend(work: number): void {
    this.#sinceLook += work;
    if (this.#sinceLook < BETWEEN_LOOKS) return;
    this.spent += this.#sinceLook;
    this.#sinceLook = 0;
    this.look();
    if (this.spent > this.#limit) throw new Halt('too-much-work', this.#beyond);
  }
}

/**
 * Runs a plan; `cancelled` and stated limits come back as refusals.
 * @throws whatever is no `Halt`: a defect of the plan.
 */
export function untilHalted<T>(run: () => T): { ok: true; value: T } | { ok: false; refusal: PlanRefusal } {
  try {
    return { ok: true, value: run() };
  } catch (error) {
    if (error instanceof Halt) return { ok: false, refusal: error.refusal };
    throw error;
  }
}
