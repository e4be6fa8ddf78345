import type { Tag } from '../../core/custody/part.ts';
import type { EnquiryId, JobId, MachineId, OwnerId, PartId, StaffId } from '../../core/ids.ts';
import type { EnquiryStage } from '../../core/job/enquiry.ts';
import type { Stream } from '../../core/journal/entry.ts';
import type { Stage } from '../../core/stage.ts';
import type { EpochMs } from '../../core/time.ts';
import type { BlobName } from '../blobs/blobName.ts';
import type { RecognitionKind } from '../recognition/normal.ts';

/** One stay of a part in a place. The open stay (`until_seq` null) is where it is now; the closed ones are its path. */
export type PartStayTable = {
  readonly part: PartId;
  readonly since_seq: number;
  readonly until_seq: number | null;
  readonly since: EpochMs;
  readonly by: StaffId;
  /** What kind of place, as `Place.at`. */
  readonly at: string;
  /** `machine:ID` or `rig:NAME` when the place is a slot, else null. */
  readonly holder: string | null;
  readonly slot: string | null;
  readonly job: JobId | null;
  /** The whole place as JSON. */
  readonly place: string;
};

/** A part of the shop's own, and the entry that made it known. */
export type ShopPartTable = { readonly part: PartId; readonly since_seq: number };

/** What a machine (or rig) says sits in its slots now. */
export type SlotFillTable = {
  readonly holder: Stream;
  readonly slot: string;
  readonly part: PartId;
  readonly since_seq: number;
};

/** Every tag ever bound, and to what. `live` is 0 once the thing got another one. */
/** What a tag hangs on: a part, a machine, or somebody of the shop whose badge it is. */
export type TagHolder = Stream | `person:${StaffId}`;
export type TagTable = {
  readonly tag: Tag;
  readonly stream: TagHolder;
  readonly live: number;
  readonly seq: number;
};

/** Every paper issued. */
export type PaperTable = {
  readonly kind: string;
  readonly year: number;
  readonly number: string;
  readonly seq: number;
  readonly job: JobId | null;
  readonly language: string;
  readonly issued: EpochMs;
  readonly supersedes: string | null;
  readonly superseded_by: string | null;
};

/** Where each job stands. */
export type JobNowTable = {
  readonly job: JobId;
  readonly owner: OwnerId;
  readonly machine: MachineId;
  readonly tag: Tag;
  readonly stage: Stage;
  readonly stage_since: EpochMs;
  readonly taken_in: EpochMs;
  readonly promised: EpochMs | null;
  readonly came_back_from: JobId | null;
  /** Of its taking-in: which of two jobs came first. Clocks do not say that. */
  readonly first_seq: number;
  readonly last_seq: number;
};

/** Where each enquiry stands. */
export type EnquiryNowTable = {
  readonly enquiry: EnquiryId;
  readonly stage: EnquiryStage;
  readonly at: EpochMs;
  readonly lapses: EpochMs;
  readonly first_seq: number;
  readonly last_seq: number;
};

/** Keyed digests by which a phone number, mail address or serial is recognised. `key` goes, the row goes. */
export type RecognitionTable = {
  readonly kind: RecognitionKind;
  readonly digest: Uint8Array;
  readonly stream: Stream;
  readonly key: string;
};

/** Blobs that entries name. */
export type NamedBlobTable = { readonly blob: BlobName; readonly first_seq: number };

/**
 * Every order, and whether something is still to be done about it; `core` is 1 where an old part is to be sent. `came` is null
 * while it is on the way, and where the owner's own part came instead.
 */
export type OrderNowTable = {
  readonly id: string;
  readonly job: JobId;
  readonly open: number;
  readonly core: number;
  readonly placed_seq: number;
  readonly placed: EpochMs;
  readonly came: EpochMs | null;
};

/** A job that went home, after so many entries of its stream; `facts` is what is learnt from it (`ClosedFacts`) as JSON. */
export type ClosedJobTable = {
  readonly job: JobId;
  readonly machine: MachineId;
  readonly taken_in: EpochMs;
  readonly entries: number;
  readonly facts: string;
};

/** What was answered of a machine's switches, as JSON. */
export type MachineToldTable = { readonly machine: MachineId; readonly switches: string };

/** Every table made from the journal. Each can be dropped and made again. */
export type ReadTables = {
  readonly part_stay: PartStayTable;
  readonly shop_part: ShopPartTable;
  readonly slot_fill: SlotFillTable;
  readonly tag: TagTable;
  readonly paper: PaperTable;
  readonly job_now: JobNowTable;
  readonly enquiry_now: EnquiryNowTable;
  readonly recognition: RecognitionTable;
  readonly named_blob: NamedBlobTable;
  readonly order_now: OrderNowTable;
  readonly closed_job: ClosedJobTable;
  readonly machine_told: MachineToldTable;
};

export type ReadTableName = keyof ReadTables;
