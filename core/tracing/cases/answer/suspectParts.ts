import type { Posterior } from '../../live/belief/posterior.ts';
import type { FaultModel, Suspect } from '../../live/types.ts';
import { shareOf } from '../../live/verdict/blame.ts';
import type { SuspectPart } from './answer.ts';

/** Faults less likely than this are not listed: they would read 0 in a hundred. */
const LISTED_FROM = 0.005;

/** What may have been wrong when the machine came in, by what would be blamed; likeliest first. */
export function suspectParts(
  model: FaultModel,
  posterior: Posterior,
  suspects: readonly Suspect[],
): readonly SuspectPart[] {
  const chance = new Map(suspects.map(({ fault, p, mended }) => [fault, p + mended]));
  const parts = [...new Set(model.faults.map(({ part }) => part))];
  return parts
    .map((part) => ({
      part,
      p: shareOf(model, posterior, (fault) => fault.part === part),
      faults: model.faults
        .filter((fault) => fault.part === part)
        .map(({ id }) => ({ id, p: chance.get(id) ?? 0 }))
        .filter(({ p }) => p >= LISTED_FROM)
        .toSorted((a, b) => b.p - a.p),
    }))
    .filter(({ faults }) => faults.length > 0)
    .toSorted((a, b) => b.p - a.p);
}
