import type { EpochMs } from '../time.ts';

/** Something about the shop's data or its clock that the people in the shop are told. */
export type Notice =
  /** Entries that were changed on the disk or are gone: what they belong to is set apart. */
  | { readonly notice: 'entries-broken'; readonly count: number; readonly first: number }
  /** Entries of a kind, version or shape that this program does not know, or out of turn: what they belong to is set apart. */
  | { readonly notice: 'entries-unreadable'; readonly count: number; readonly first: number }
  /** One of them says something of the shop itself: whatever needs its settings, people or model is refused. */
  | { readonly notice: 'shop-set-apart'; readonly first: number }
  /** Keys whose bytes were changed: what is sealed under them cannot be read. */
  | { readonly notice: 'keys-damaged'; readonly count: number }
  /** Sealed files that entries name and that are not there. */
  | { readonly notice: 'files-missing'; readonly count: number; readonly first: string }
  | { readonly notice: 'read-tables-made-anew'; readonly count: number; readonly first: string }
  /** What keeps the journal from being changed in its own file was gone or changed, and was made anew. */
  | { readonly notice: 'guards-made-anew'; readonly count: number; readonly first: string }
  /** The file with the last acknowledged number did not hold together, or was gone, and was begun anew. */
  | { readonly notice: 'mark-lost'; readonly path: string }
  /** The last backup was not made, or was not whole. */
  | { readonly notice: 'backup-failed'; readonly refused: string; readonly path: string }
  /** Something was written since, and the last good backup is older than the shop allows; `days` old. */
  | { readonly notice: 'backup-old'; readonly days: number }
  /** Not one good backup in so many days. */
  | { readonly notice: 'backup-none'; readonly days: number }
  /** Owners whose agreed time is over within so many days: what is held of them goes by itself then. */
  | { readonly notice: 'erasures-due'; readonly count: number; readonly days: number }
  /** The last entry was written at a time that the clock has not reached; `ms` behind it. */
  | { readonly notice: 'clock-behind-journal'; readonly ms: number; readonly last: EpochMs }
  /** The clock was set while the shop was open; `ms` below zero: back. */
  | { readonly notice: 'clock-jumped'; readonly ms: number; readonly at: EpochMs };

/** Why a shop can be read only, in words: the reason, where, and the ways out. */
export type OnlyRead = { readonly says: string; readonly path: string; readonly ways: readonly string[] };

/** How the shop stands: why it may only be read, if so, and what else is to be known. */
export type StandingSheet = { readonly onlyRead: OnlyRead | null; readonly notices: readonly Notice[] };
