import { streamOf } from '../../../core/entries/subjects.ts';
import type { JobId } from '../../../core/ids.ts';
import type { Stream } from '../../../core/journal/entry.ts';
import type { Refusal } from '../../../core/refusal.ts';
import type { Reader } from '../../../db/index.ts';

type Apart = Pick<Reader, 'setApart'>;

/** A reader that notes every stream which it loads. */
export function noting(read: Reader): { readonly noted: Reader; readonly loaded: ReadonlySet<Stream> } {
  const loaded = new Set<Stream>();
  const load: Reader['load'] = (subject, ...id) => {
    loaded.add(streamOf(subject, ...id));
    return read.load(subject, ...id);
  };
  return { noted: { ...read, load }, loaded };
}

/**
 * Why nobody may act on what a command is about: an entry of one of its streams cannot be read, so that the rest may
 * say too little (a part that is not seen would not be missed, a job that is not seen would be begun a second time). Null
 * where all of them can be read whole. Whatever was loaded for the command counts, so that no stream has to be named here.
 * The shop's own stream does not: nearly everything loads it, and what is asked of it is watched (`lookedAt`).
 * @param loaded Streams that the command is about; those that it only looks past, such as other jobs under way, keep nothing back.
 */
export const setApartRefusal = (read: Apart, loaded: ReadonlySet<Stream>): Refusal | null =>
  refusalFor(read, (stream) => stream !== 'shop' && loaded.has(stream));

/** Why nobody may act on what the shop itself says: an entry of its own stream cannot be read. */
export const shopSetApart = (read: Apart): Refusal | null => refusalFor(read, (stream) => stream === 'shop');

/** Why a job cannot even be shown: too little of it can be read. */
export const jobSetApart = (read: Apart, job: JobId): Refusal | null =>
  refusalFor(read, (stream) => stream === `job:${job}`);

/** Why nobody may act on what these streams say; null where none of them is set apart. */
export function refusalFor(read: Apart, isNeeded: (stream: Stream) => boolean): Refusal | null {
  const apart = read.setApart().find(({ stream }) => isNeeded(stream));
  if (!apart) return null;
  return {
    refused: 'stream-set-apart',
    stream: apart.stream,
    entry: Math.min(...apart.unreadable.map(({ seq }) => seq)),
  };
}

/**
 * The numbers of all entries that cannot be read in these streams, in order: of those that this reader has loaded.
 */
export const unreadableIn = (read: Apart, streams: ReadonlySet<string>): readonly number[] =>
  read
    .setApart()
    .filter(({ stream }) => streams.has(stream))
    .flatMap(({ unreadable }) => unreadable.map(({ seq }) => seq))
    .toSorted((a, b) => a - b);

/** The reader that tells what can be read of a stream that is set apart, instead of nothing: for showing it only. */
export const asFarAsReadable = (read: Reader): Reader => ({
  ...read,
  load: async (subject, ...id) => (await read.loadReadable(subject, ...id)).state,
});
