import type { Job } from '../job.ts';
import type { CameAlong } from '../told.ts';

/** What came along and is to be given back: all of it, less what was lost here. */
export const stillHere = ({ cameAlong, lost }: Pick<Job, 'cameAlong' | 'lost'>): readonly CameAlong[] =>
  cameAlong.flatMap((one) => {
    const gone = lost.reduce((sum, { id, count }) => sum + (id === one.id ? count : 0), 0);
    return one.count > gone ? [{ ...one, count: one.count - gone }] : [];
  });
