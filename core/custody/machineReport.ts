/** A value that could not be read, and why: a gap, never a guess. */
export type Gap = { readonly about: string; readonly why: string };
/** What a reading gives reason to say, with the source of that reason. */
export type Remark = { readonly about: string; readonly says: string; readonly why: string; readonly source: string };

export type SaidMemorySlot = {
  readonly locator: string | null;
  readonly bank: string | null;
  /** null: empty, or not said (then it stands in `gaps`). */
  readonly sizeMiB: number | null;
  readonly type: string | null;
  readonly speedMTs: number | null;
  readonly configuredMTs: number | null;
  readonly formFactor: string | null;
};

export type SaidDrive = {
  readonly model: string | null;
  readonly kind: string | null;
  readonly health: 'passed' | 'failed' | null;
  readonly powerOnHours: number | null;
  readonly reallocated: number | null;
  readonly pending: number | null;
  readonly uncorrectable: number | null;
  readonly percentageUsed: number | null;
  readonly mediaErrors: number | null;
};

/** What a machine says of itself, read from the output of general-purpose system tools. */
export type MachineReport = {
  readonly kinds: readonly string[];
  readonly board: { readonly vendor: string | null; readonly name: string | null };
  readonly system: { readonly vendor: string | null; readonly name: string | null };
  readonly chassis: string | null;
  readonly firmware: { readonly vendor: string | null; readonly version: string | null; readonly date: string | null };
  readonly processors: readonly {
    readonly name: string | null;
    readonly socket: string | null;
    readonly cores: number | null;
  }[];
  readonly memory: { readonly slots: readonly SaidMemorySlot[] };
  readonly cards: readonly { readonly kind: string; readonly name: string }[];
  readonly drives: readonly SaidDrive[];
  readonly remarks: readonly Remark[];
  readonly gaps: readonly Gap[];
};

/** A card slot as the machine's own report names it. */
export type SaidCardSlot = {
  readonly designation: string;
  readonly type: string;
  readonly usage: 'in-use' | 'available' | 'unknown';
};
