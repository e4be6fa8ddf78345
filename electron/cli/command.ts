/** Where a command's lines go, and where its files come from. */
export type Io = {
  readonly out: (line: string) => void;
  readonly err: (line: string) => void;
  readonly readFile: (path: string) => Promise<Uint8Array>;
  /** Standard input, line by line, for a command that answers one before the next is read; absent where there is none. */
  readonly lines?: () => AsyncIterable<string>;
};

/** One command of the command line. Exit code 2 is for what the asker can put right. */
export type CliCommand = {
  readonly name: string;
  /** What it does, in one line; then how it is asked. */
  readonly help: string;
  readonly run: (args: readonly string[], io: Io) => Promise<number>;
};
