/** What an attack or fault came to, over all its tries. */
export type Outcome = {
  readonly tries: number;
  /** The shop was whole afterwards, or said in words what was wrong and kept what it had. */
  readonly survived: number;
  /** What was acknowledged and is neither there nor named as missing. */
  readonly lost: number;
  /** What the shop said, each once. */
  readonly said: readonly string[];
};

/** One fault or attack, tried in a shop's folder of its own. */
export type Attack = {
  /** As it stands in the table. */
  readonly name: string;
  readonly run: (extent: { readonly short: boolean }) => Promise<Outcome>;
};

/** Counts tries. */
export class Tally {
  #tries = 0;
  #survived = 0;
  #lost = 0;
  readonly #said = new Set<string>();

  survived(said: string): void {
    this.#tries += 1;
    this.#survived += 1;
    this.#said.add(said);
  }

  /** Something acknowledged is gone without a word, or the shop does not open any more. */
  lost(said: string): void {
    this.#tries += 1;
    this.#lost += 1;
    this.#said.add(said);
  }

  survivedIf({ wrong, said }: { readonly wrong: boolean; readonly said: string }): void {
    if (wrong) this.lost(said);
    else this.survived(said);
  }

  outcome(): Outcome {
    return { tries: this.#tries, survived: this.#survived, lost: this.#lost, said: [...this.#said] };
  }
}
