import { type Kysely, sql } from 'kysely';

/** The journal with its commands, closed against change from the first day. */
export async function up(db: Kysely<unknown>): Promise<void> {
  const run = (text: string) => sql.raw(text).execute(db);
  await run(`create table meta (name text primary key, value text not null) strict`);
  await run(`create table journal (
    branch text not null,
    seq integer not null check (seq >= 1),
    stream text not null,
    stream_seq integer not null check (stream_seq >= 1),
    at integer not null,
    by text not null,
    device text not null,
    command text not null,
    kind text not null,
    v integer not null check (v >= 1),
    bytes blob not null,
    prev_hash blob not null check (length(prev_hash) = 32),
    hash blob not null check (length(hash) = 32),
    primary key (branch, seq),
    unique (branch, stream, stream_seq)
  ) strict`);
  await run(`create table command (
    branch text not null,
    command text not null,
    asked blob not null,
    first_seq integer not null,
    last_seq integer not null check (last_seq >= first_seq),
    made text not null,
    behind_ms integer,
    primary key (branch, command),
    unique (branch, first_seq),
    unique (branch, last_seq),
    foreign key (branch, first_seq) references journal (branch, seq),
    foreign key (branch, last_seq) references journal (branch, seq)
  ) strict`);
  await run(`create table projection (name text primary key, version integer not null, seq integer not null) strict`);
  // Kept here and in the key file, so that either can be brought back from an older copy without reviving a key.
  await run(`create table erased_key (id text primary key, at integer not null) strict`);
  for (const table of ['journal', 'command', 'erased_key']) {
    for (const change of ['update', 'delete']) {
      await run(`create trigger ${table}_no_${change} before ${change} on ${table}
        begin select raise(abort, '${table} is append-only'); end`);
    }
  }
  // An insert that replaces a row would delete it without asking the triggers above.
  await run(`create trigger journal_next before insert on journal
    when new.seq <> (select coalesce(max(seq), 0) + 1 from journal where branch = new.branch)
      or new.stream_seq <> (select coalesce(max(stream_seq), 0) + 1 from journal where branch = new.branch and stream = new.stream)
      or new.prev_hash <> coalesce((select hash from journal where branch = new.branch order by seq desc limit 1), zeroblob(32))
    begin select raise(abort, 'journal takes only the next entry'); end`);
  const noted = (column: string) =>
    `exists (select 1 from command where branch = new.branch and ${column} = new.${column})`;
  await run(`create trigger command_once before insert on command
    when ${['command', 'first_seq', 'last_seq'].map(noted).join(' or ')}
    begin select raise(abort, 'command is written once'); end`);
}
