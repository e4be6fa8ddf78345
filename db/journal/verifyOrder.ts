import type { Kysely } from 'kysely';
import type { CommandTable, JournalTable, ShopTables } from '../schema.ts';
import type { JournalFinding } from './finding.ts';

/** Counts every stream along the journal: from 1, without gaps. */
export class StreamCheck {
  readonly #counts = new Map<string, number>();

  see(row: JournalTable): readonly JournalFinding[] {
    const expected = (this.#counts.get(row.stream) ?? 0) + 1;
    this.#counts.set(row.stream, row.stream_seq);
    return row.stream_seq === expected
      ? []
      : [{ seq: row.seq, wrong: 'stream-not-next', detail: `${row.stream_seq} instead of ${expected}` }];
  }
}

/** Follows the commands along the journal: each one run of entries, as the table of commands notes it. */
export class CommandCheck {
  readonly #noted: Map<string, CommandTable>;
  readonly #ended = new Set<string>();
  #current: { readonly command: string; readonly first: number } | null = null;
  readonly clockRanBack: number;

  private constructor(noted: readonly CommandTable[]) {
    this.#noted = new Map(noted.map((row) => [row.command, row]));
    this.clockRanBack = noted.filter((row) => row.behind_ms !== null).length;
  }

  static async load(db: Kysely<ShopTables>, branch: string): Promise<CommandCheck> {
    return new CommandCheck(await db.selectFrom('command').where('branch', '=', branch).selectAll().execute());
  }

  see(row: JournalTable): readonly JournalFinding[] {
    const findings: JournalFinding[] = [];
    if (this.#current?.command !== row.command) {
      if (this.#ended.has(row.command)) findings.push({ seq: row.seq, wrong: 'command-split' });
      this.#ended.add(row.command);
      this.#current = { command: row.command, first: row.seq };
    }
    const noted = this.#noted.get(row.command);
    if (!noted) findings.push({ seq: row.seq, wrong: 'command-missing' });
    else if (row.seq < noted.first_seq || row.seq > noted.last_seq)
      findings.push({ seq: row.seq, wrong: 'command-not-as-noted' });
    else if (row.seq === noted.first_seq && row.stream !== noted.made)
      findings.push({ seq: row.seq, wrong: 'command-not-as-noted' });
    return findings;
  }

  /** Commands that are noted without a single entry in the journal. */
  left(): readonly JournalFinding[] {
    return [...this.#noted.values()]
      .filter(({ command }) => !this.#ended.has(command))
      .map(({ first_seq }) => ({ seq: first_seq, wrong: 'command-not-as-noted' }));
  }
}
