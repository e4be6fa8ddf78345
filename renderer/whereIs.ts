import type { FindHit } from '../core/contract/screens.ts';
import type { Stage } from '../core/stage.ts';
import { jobPath } from './jobPath.ts';

/**
 * Where a found thing is opened: a job in the room where one stands, else at its present stage; a part on the wall, the
 * rest at the counter. A job whose stage cannot be read, or that waits for its owner or has gone home, has nothing at the
 * bench: it is opened at the counter.
 */
export function whereIs(found: FindHit, here: string): string {
  if (found.is === 'part') return found.job ? `/bench/${found.job}?part=${found.id}` : `/wall?part=${found.id}`;
  if (found.is === 'paper') return `/counter/${found.job}?paper=${found.id}`;
  if (found.job) return jobFrom(here, found.job, found.stage);
  return `/counter?${found.is}=${found.id}`;
}

/** The bench is done with it. */
const DONE_WITH: ReadonlySet<Stage> = new Set<Stage>(['ready', 'not-collected', 'gone-home']);

function jobFrom(here: string, job: string, stage: FindHit['stage']): string {
  if (!stage || DONE_WITH.has(stage) || here === 'counter') return `/counter/${job}`;
  return here === 'bench' ? `/bench/${job}` : jobPath(job, stage);
}
