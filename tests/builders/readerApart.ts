import { foldOf } from '../../core/entries/entryTable.ts';
import { streamOf } from '../../core/entries/subjects.ts';
import type { Stream } from '../../core/journal/entry.ts';
import type { Reader } from '../../db/index.ts';

/** A reader to whom one stream is set apart, as if an entry of it could not be read (`tests/faults/planted.test.ts` has real ones). */
export function readerApart(read: Reader, apart: Stream): Reader {
  const unreadable = [{ seq: 7, wrong: 'not-an-entry' as const }];
  let isMet = false;
  const meets = (stream: Stream): boolean => {
    isMet ||= stream === apart;
    return stream === apart;
  };
  return {
    ...read,
    load: async (subject, ...id) => {
      const isApart = meets(streamOf(subject, ...id));
      const state = await read.load(subject, ...id);
      return isApart && subject !== 'shop' && subject !== 'people' ? foldOf(subject).none : state;
    },
    loadReadable: async (subject, ...id) => {
      const isApart = meets(streamOf(subject, ...id));
      return { ...(await read.loadReadable(subject, ...id)), ...(isApart && { unreadable }) };
    },
    loadStream: async (subject, stream) => {
      const isApart = meets(stream);
      return { ...(await read.loadStream(subject, stream)), ...(isApart && { unreadable }) };
    },
    setApart: () => (isMet ? [{ stream: apart, unreadable }] : []),
  };
}
