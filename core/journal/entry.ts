import type { CommandId, StaffId } from '../ids.ts';
import type { EpochMs } from '../time.ts';

export type { Json } from '../json.ts';

/** What an entry belongs to. Entries of one stream are counted from 1 without gaps. */
export type Stream =
  | `owner:${string}`
  | `machine:${string}`
  | `job:${string}`
  | `part:${string}`
  | `paper:${string}:${number}`
  | `enquiry:${string}`
  | 'people'
  | 'shop';

/** What the entries of a subject's streams can be, given its kinds with their bodies. */
export type EntryOf<To extends Stream, Bodies> = {
  readonly [Kind in keyof Bodies & string]: {
    readonly stream: To;
    readonly kind: Kind;
    readonly body: Bodies[Kind];
  };
}[keyof Bodies & string];

/** An entry as `core` decides it: not yet numbered, dated, sealed or chained. */
export type Draft<Kind extends string = string, Body = unknown> = {
  readonly stream: Stream;
  readonly kind: Kind;
  /** Version of the body's shape. */
  readonly v: number;
  readonly body: Body;
};

/** An entry as read back from the journal, lifted to its newest shape, personal fields opened where their key lives. */
export type Entry<Kind extends string = string, Body = unknown> = Draft<Kind, Body> & {
  readonly branch: string;
  /** Order in the whole branch, from 1. The order of things is `seq`, never `at`. */
  readonly seq: number;
  readonly streamSeq: number;
  /** The service's clock as it was; it may lie behind the entry before, where the clock had been ahead. */
  readonly at: EpochMs;
  readonly by: StaffId;
  readonly device: string;
  readonly command: CommandId;
};
