/** Something that is worked out once per opened model: what it is kept as, before anything is known. */
export type Kept<T> = { readonly begin: () => T };

/**
 * What was worked out of one opened model, so that it is worked out once: priors, hypotheses, steps in place, logs carried
 * through. It belongs to the model that it was opened with; nothing of it changes an answer.
 */
export class Memory {
  #owner: object | null = null;
  readonly #kept = new Map<Kept<unknown>, unknown>();

  /** Gives the memory to its model, once. */
  belongTo(owner: object): void {
    this.#owner ??= owner;
  }

  /**
   * What is kept of a kind, for the model that this belongs to.
   * @throws {Error} for a model that was changed after it was opened (`{ ...model }`): a defect, for it would be answered
   *   from what was worked out of another.
   */
  of<T>(owner: object, kept: Kept<T>): T {
    if (owner !== this.#owner) throw new Error('a model that was changed must be opened anew');
    if (!this.#kept.has(kept)) this.#kept.set(kept, kept.begin());
    // What is under a key was begun by that key: a map of keys to values of their own types, which no type says.
    return this.#kept.get(kept) as T;
  }
}
