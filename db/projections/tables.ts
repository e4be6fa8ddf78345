/** One stay of a part in a place. The open stay (`until_seq` null) is where it is now; the closed ones are its path. */
export type PartStayTable = {
  readonly part: string;
  readonly since_seq: number;
  readonly until_seq: number | null;
  readonly since: number;
  readonly by: string;
  /** What kind of place, as `Place.at`. */
  readonly at: string;
  /** `machine:ID` or `rig:NAME` when the place is a slot, else null. */
  readonly holder: string | null;
  readonly slot: string | null;
  readonly job: string | null;
  /** The whole place as JSON. */
  readonly place: string;
};

/** What a machine (or rig) says sits in its slots now. */
export type SlotFillTable = {
  readonly holder: string;
  readonly slot: string;
  readonly part: string;
  readonly since_seq: number;
};

/** Every tag ever bound, and to what. `live` is 0 once the thing got another one. */
export type TagTable = { readonly tag: string; readonly stream: string; readonly live: number; readonly seq: number };

/** Every paper issued. */
export type PaperTable = {
  readonly kind: string;
  readonly year: number;
  readonly number: string;
  readonly seq: number;
  readonly job: string | null;
  readonly language: string;
  readonly issued: number;
  readonly supersedes: string | null;
  readonly superseded_by: string | null;
};

/** Where each job stands. */
export type JobNowTable = {
  readonly job: string;
  readonly owner: string;
  readonly machine: string;
  readonly tag: string;
  readonly stage: string;
  readonly stage_since: number;
  readonly taken_in: number;
  readonly promised: number | null;
  readonly came_back_from: string | null;
  readonly last_seq: number;
};

/** Where each enquiry stands. */
export type EnquiryNowTable = {
  readonly enquiry: string;
  readonly stage: string;
  readonly at: number;
  readonly lapses: number;
  readonly last_seq: number;
};

/** Keyed digests by which a phone number, mail address or serial is recognised. `key` goes, the row goes. */
export type RecognitionTable = {
  readonly kind: string;
  readonly digest: Uint8Array;
  readonly stream: string;
  readonly key: string;
};

/** Blobs that entries name. */
export type NamedBlobTable = { readonly blob: string; readonly first_seq: number };

/** Every order, and whether something is still to be done about it; `core` is 1 where an old part is to be sent. */
export type OrderNowTable = { readonly id: string; readonly job: string; readonly open: number; readonly core: number };

/** Every table made from the journal. Each can be dropped and made again. */
export type ReadTables = {
  readonly part_stay: PartStayTable;
  readonly slot_fill: SlotFillTable;
  readonly tag: TagTable;
  readonly paper: PaperTable;
  readonly job_now: JobNowTable;
  readonly enquiry_now: EnquiryNowTable;
  readonly recognition: RecognitionTable;
  readonly named_blob: NamedBlobTable;
  readonly order_now: OrderNowTable;
};

export type ReadTableName = keyof ReadTables;
