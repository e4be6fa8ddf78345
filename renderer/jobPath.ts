import type { Stage } from '../core/stage.ts';

const AT_THE_COUNTER: ReadonlySet<Stage> = new Set<Stage>([
  'taken-in',
  'owners-word-needed',
  'part-on-the-way',
  'ready',
  'not-collected',
  'gone-home',
]);

/** Where a job is opened at its present stage. */
export const jobPath = (job: string, stage: Stage): string =>
  AT_THE_COUNTER.has(stage) ? `/counter/${job}` : `/bench/${job}`;
