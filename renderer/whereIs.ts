import type { FindHit } from '../core/contract/screens.ts';
import { jobPath } from './jobPath.ts';

/**
 * Where a found thing is opened: a job at its present stage, a part on the wall, the rest at the counter. A job whose
 * stage cannot be read is opened at the counter, where what can be read of it stands.
 */
export function whereIs(found: FindHit): string {
  if (found.is === 'part') return found.job ? `/bench/${found.job}?part=${found.id}` : `/wall?part=${found.id}`;
  if (found.is === 'paper') return `/counter/${found.job}?paper=${found.id}`;
  if (found.job) return found.stage ? jobPath(found.job, found.stage) : `/counter/${found.job}`;
  return `/counter?${found.is}=${found.id}`;
}
