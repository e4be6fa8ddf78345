import type { About } from '../../../core/commands/kernel/command.ts';
import type { View } from '../../../core/entries/view.ts';
import type { JobId, PartId } from '../../../core/ids.ts';
import type { Refusal } from '../../../core/refusal.ts';
import type { Reader } from '../../../db/index.ts';

type Apart = Pick<Reader, 'setApart'>;

/**
 * Why nobody may act on what a command is about: an entry of one of its streams cannot be read, so that the rest may
 * say too little (a part that is not seen would not be missed). Null where all of them can be read whole. Streams that
 * the command only looks past, such as other jobs under way, keep nothing back.
 */
export function setApartRefusal(read: Apart, about: About, view: View): Refusal | null {
  const parts: readonly PartId[] = [...(view.machine?.parts ?? []), ...(view.job?.parts ?? []), ...(about.parts ?? [])];
  const needed = new Set<string>([
    ...[about.job, about.olderJob].flatMap((id) => (id ? `job:${id}` : [])),
    ...[about.owner, view.job?.owner].flatMap((id) => (id ? `owner:${id}` : [])),
    ...[about.machine, view.job?.machine].flatMap((id) => (id ? `machine:${id}` : [])),
    ...(about.enquiry ? [`enquiry:${about.enquiry}`] : []),
    ...parts.map((id) => `part:${id}`),
  ]);
  // Whether an owner's job is open has to be known of every one.
  const isOwners = (stream: string) => about.ownersJobs === true && stream.startsWith('job:');
  return refusalFor(read, (stream) => needed.has(stream) || isOwners(stream));
}

/** Why nobody may act on what the shop itself says: an entry of its own stream cannot be read. */
export const shopSetApart = (read: Apart): Refusal | null => refusalFor(read, (stream) => stream === 'shop');

/** Why a job cannot even be shown: too little of it can be read. */
export const jobSetApart = (read: Apart, job: JobId): Refusal | null =>
  refusalFor(read, (stream) => stream === `job:${job}`);

function refusalFor(read: Apart, isNeeded: (stream: string) => boolean): Refusal | null {
  const apart = read.setApart().find(({ stream }) => isNeeded(stream));
  if (!apart) return null;
  return {
    refused: 'stream-set-apart',
    stream: apart.stream,
    entry: Math.min(...apart.unreadable.map(({ seq }) => seq)),
  };
}

/** The same things, saying when anybody asks them anything. */
export function watched<Thing extends object>(thing: Thing, onAsked: () => void): Thing {
  return new Proxy(thing, {
    get: (target, name) => {
      onAsked();
      return Reflect.get(target, name);
    },
  });
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
