import { errorFacts, type Log } from '../log/log.ts';
import { type Mark, type MarkFile, openMarkFile } from './lastAcknowledged.ts';

/** The marks of the last acknowledged entry, in every place they are kept. */
export type Marks = { readonly put: (mark: Mark) => void; readonly close: () => void };

/** No marks are kept where nothing is written. */
export const noMarks: Marks = { put: () => undefined, close: () => undefined };

/** Opens the marks. One that cannot be written is logged and stops nothing: the entry itself is on the disk. */
export function openMarks(paths: readonly string[], key: Uint8Array, log: Log): Marks {
  const guarded = <T>(work: () => T): T | null => {
    try {
      return work();
    } catch (error) {
      log('mark-not-kept', errorFacts(error));
      return null;
    }
  };
  const files = paths
    .map((path) => guarded(() => openMarkFile(path, key)))
    .filter((file): file is MarkFile => file !== null);
  return {
    put: (mark) => {
      for (const file of files) guarded(() => file.put(mark));
    },
    close: () => {
      for (const file of files) guarded(() => file.close());
    },
  };
}
