import type { OwnerBodies } from '../approval/owner.ts';
import type { PartBodies } from '../custody/ledger.ts';
import type { MachineBodies } from '../custody/machine.ts';
import type { EnquiryId, JobId, MachineId, OwnerId, PartId } from '../ids.ts';
import type { EnquiryBodies } from '../job/enquiry.ts';
import type { JobBodies } from '../job/entries.ts';
import type { ShopBodies } from '../job/shop.ts';
import type { EntryOf, Stream } from '../journal/entry.ts';
import type { PeopleBodies } from '../people/people.ts';
import type { PaperBodies } from './paperIssued.ts';

/** Every subject with the kinds of entries that its streams may hold, each with its body. */
export type Bodies = {
  readonly shop: ShopBodies;
  readonly owner: OwnerBodies;
  readonly machine: MachineBodies;
  readonly part: PartBodies;
  readonly job: JobBodies;
  readonly enquiry: EnquiryBodies;
  readonly paper: PaperBodies;
  readonly people: PeopleBodies;
};
export type Subject = keyof Bodies;
export type KindOf<S extends Subject> = keyof Bodies[S] & string;

/** The streams of a subject. */
export type StreamOf<S extends Subject> = {
  readonly shop: 'shop';
  readonly owner: `owner:${string}`;
  readonly machine: `machine:${string}`;
  readonly part: `part:${string}`;
  readonly job: `job:${string}`;
  readonly enquiry: `enquiry:${string}`;
  readonly paper: `paper:${string}:${number}`;
  readonly people: 'people';
}[S];

/** Whose stream it is. */
export type SubjectOf<To> = { readonly [S in Subject]: To extends StreamOf<S> ? S : never }[Subject];

/** An entry of a subject, as decided: its stream, kind and body. */
export type SubjectEntry<S extends Subject> = EntryOf<StreamOf<S>, Bodies[S]>;
export type AnyEntry = { readonly [S in Subject]: SubjectEntry<S> }[Subject];

/** Is it an entry of this subject? */
export const isOf = <S extends Subject>(subject: S, entry: AnyEntry): entry is SubjectEntry<S> & AnyEntry =>
  isStreamOf(subject, entry.stream);

/** Is it a stream of this subject? */
export const isStreamOf = <S extends Subject>(subject: S, stream: string): stream is StreamOf<S> =>
  stream.split(':')[0] === subject;

type Ids = {
  readonly owner: OwnerId;
  readonly machine: MachineId;
  readonly part: PartId;
  readonly job: JobId;
  readonly enquiry: EnquiryId;
};

/** The id in a stream's name. */
export const idIn = <S extends keyof Ids>(stream: `${S}:${string}`): Ids[S] =>
  stream.slice(stream.indexOf(':') + 1) as Ids[S];

/**
 * The id in the name of a stream that must be of this subject.
 * @throws {RangeError} for any other stream: a defect.
 */
export function idOf<S extends keyof Ids>(subject: S, stream: Stream): Ids[S] {
  if (!isWithin(subject, stream)) throw new RangeError(`no stream of ${subject}: ${stream}`);
  return idIn(stream);
}

const isWithin = <S extends keyof Ids>(subject: S, stream: string): stream is `${S}:${string}` =>
  stream.startsWith(`${subject}:`);

/** The stream of a subject and an id; those of the shop and its people have none. */
export const streamOf = <S extends Subject>(subject: S, id?: string): StreamOf<S> =>
  (id === undefined ? subject : `${subject}:${id}`) as StreamOf<S>;
