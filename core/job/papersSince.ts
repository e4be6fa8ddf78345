import type { Job } from './job.ts';

/** The papers of a job that were issued after this place in its stream, in order. */
export const papersSince = ({ papers, came }: Pick<Job, 'papers' | 'came'>, place: number): Job['papers'] =>
  papers.filter((_, index) => (came.papers[index] ?? 0) > place);

/** The papers of a job that were issued before this place in its stream, in order. */
export const papersBefore = ({ papers, came }: Pick<Job, 'papers' | 'came'>, place: number): Job['papers'] =>
  papers.filter((_, index) => (came.papers[index] ?? 0) < place);
