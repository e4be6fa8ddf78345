import type { CommandId, OwnerId, StaffId } from '../../core/ids.ts';
import type { Draft, Stream } from '../../core/journal/entry.ts';
import type { Purpose } from '../../core/journal/personal.ts';
import type { Written } from '../../core/journal/written.ts';
import type { Refusal } from '../../core/refusal.ts';
import type { EpochMs } from '../../core/time.ts';
import type { BlobName } from '../blobs/blobName.ts';
import type { EntriesWritten } from '../journal/changes.ts';
import type { Reader } from '../journal/reader.ts';
import type { JournalVerdict } from '../journal/verify.ts';
import type { Rebuilt } from '../projections/rebuild.ts';
import type { RecognitionKind } from '../recognition/normal.ts';
import type { Erasure, PurposeDecision } from '../seal/eraseOwner.ts';
import type { SealedHead } from '../seal/heads.ts';
import type { ShopStanding } from './standing.ts';

/** A command as asked: who, where, and everything that was asked, for recognising a retry. */
export type AskedCommand = {
  readonly command: CommandId;
  readonly by: StaffId;
  readonly device: string;
  readonly asked: unknown;
};

/** What a command came to. `seq`: its last entry. `firstStream`: the stream of its first. `replayed`: this id had been carried out before. */
export type Executed = {
  readonly ok: true;
  readonly seq: number;
  readonly firstStream: Stream;
  readonly replayed: boolean;
};
export type NotExecuted = { readonly ok: false; readonly refusal: Refusal };

/** What a command comes to: entries to append, or a refusal that changes nothing. */
export type EntriesOrRefusal =
  | { readonly ok: true; readonly entries: readonly Draft[] }
  | { readonly ok: false; readonly refusal: Refusal };

/** Decides on what it reads. May be asked more than once: it must do nothing but read and decide. `at` is the entries' time. */
export type DecideOnRead = (read: Reader, at: EpochMs) => EntriesOrRefusal | Promise<EntriesOrRefusal>;

/** A shop's journal, keys and blobs, opened by the one process that may write. */
export type OpenShop = {
  /** The shop's own id, the same for as long as it lives. */
  readonly id: string;
  readonly branch: string;
  /** The journal's file. */
  readonly path: string;
  readonly runCommand: (asked: AskedCommand, decide: DecideOnRead) => Promise<Executed | NotExecuted>;
  /** Why a command that decided these would be refused all the same, by the journal or a read table; null: it would not. */
  readonly whyNotWritten: (drafts: readonly Draft[], written: Written) => Promise<Refusal | null>;
  /** A reader of the journal as it stands now. */
  readonly read: () => Promise<Reader>;
  /** What was written after `since`, in order, without bodies; goes on until `signal` or the shop ends it. */
  readonly changes: (from: { readonly since: number; readonly signal?: AbortSignal }) => AsyncIterable<EntriesWritten>;
  /** Owners, machines and parts that were ever known by exactly this phone number, mail address or serial. */
  readonly recognise: (kind: RecognitionKind, text: string) => Promise<readonly Stream[]>;
  readonly blobs: {
    /** Seals bytes and writes them to the disk. Put first, then name the blob in an entry (outside any personal field). */
    readonly put: (
      bytes: Uint8Array,
      whose: { readonly of: string; readonly purpose: Purpose },
    ) => Promise<BlobName | Refusal>;
    readonly get: (name: BlobName) => Promise<Uint8Array | Refusal>;
    /** Removes a sealed file that was put and never named in an entry: its caller knows that of its own. */
    readonly drop: (name: BlobName) => void;
    /** Destroys the keys of drafts: what was sealed for them can be read nowhere any more. */
    readonly forget: (draft: `draft:${string}`) => Promise<void>;
    /**
     * Removes what no entry of the journal names, nor the list given, and is older than a day. Nothing goes while an entry
     * is broken. @returns How many files went.
     */
    readonly sweep: (also?: Iterable<string>) => Promise<number>;
  };
  /** On how many days, up to so many, something was written since a moment: by the last entries, whose clock may have been wrong. */
  readonly daysWorked: (since: EpochMs, most: number) => Promise<number>;
  /** Purposes for which something of an owner is held that can still be read. */
  readonly held: (owner: string) => readonly Purpose[];
  /**
   * Carries out a command that says what of an owner is destroyed, and destroys it. Where that is cut short, the next start
   * ends it.
   */
  readonly erasing: <Done extends Executed | NotExecuted>(
    owner: OwnerId,
    carryOut: () => Promise<Done>,
  ) => Promise<Done>;
  readonly eraseOwner: (owner: string, decisions: readonly PurposeDecision[]) => Promise<Erasure>;
  /** Seals the chain's head into the key file. @returns The sealed head; null for an empty journal. */
  readonly sealHeads: () => Promise<SealedHead | null>;
  readonly lastSealedHead: () => SealedHead | null;
  /** Whether the shop may be written, and what is to be known about its data. */
  readonly standing: () => ShopStanding;
  /** Streams in which entries were met, since the shop was opened, that cannot be read. */
  readonly setApart: () => ReadonlySet<Stream>;
  /** Looks through the whole journal beside the work; what it finds stands in `standing` then. */
  readonly lookThrough: () => Promise<{ readonly entries: number; readonly broken: number; readonly missing: number }>;
  readonly verify: (given?: { readonly printedHeads?: readonly string[] }) => Promise<JournalVerdict>;
  /** Makes every read table anew from the journal and swaps it in. */
  readonly rebuild: () => Promise<Rebuilt>;
  /** Digest of each read table's rows. */
  readonly digests: () => Promise<Readonly<Record<string, string>>>;
  /** Ends commands, seals the head, closes the files and lets go of the folder. */
  readonly close: () => Promise<void>;
};
