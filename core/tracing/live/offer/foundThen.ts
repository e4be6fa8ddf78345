import { cameOf } from '../cameOf.ts';
import { type Ready, undone } from '../gates/ready.ts';
import { PUT_BACK } from '../model/special.ts';
import type { UsedIds } from '../model/usedIds.ts';
import type { OutcomeId, Step, StepId } from '../types.ts';

/** What was just found, and what every technician does next, the first of them that can be done. Common practice, no source. */
const THEN: { readonly [step: StepId]: { readonly [outcome: OutcomeId]: readonly StepId[] } } = {
  'look-inside': {
    burnt: ['burnt-where', 'meas-coils'],
    'plug-off': ['press-plugs'],
    'memory-up': ['dimm-press'],
    'card-loose': ['card-seat'],
    'cooler-loose': ['cool-again', 'cpu-again', 'cool-even'],
    'lead-in-fan': ['fan-free'],
  },
  'drive-health': { warning: ['drive-image'] },
  'drive-dock': { errors: ['drive-image'] },
  'date-look': { wrong: ['cell-measure'] },
  census: { 'wrong-slot': ['dimm-right'] },
  'scan-offline': { found: ['malware-off'] },
  'card-none': { works: ['card-loan', 'meas-rails'] },
};

/** Between their own out and ours in nobody puts theirs back: what goes in first, by what came out. */
const OURS_FIRST: { readonly [out: StepId]: StepId } = { 'card-none': 'card-loan' };

/** What it goes by. */
export const FOUND_THEN: UsedIds = {
  shown: Object.fromEntries(Object.entries(THEN).map(([step, found]) => [step, Object.keys(found)])),
  steps: [...Object.values(THEN).flatMap((found) => Object.values(found).flat()), ...Object.entries(OURS_FIRST).flat()],
};

/** The step that what was found last asks for by itself; null where nothing was found, or it cannot be done now. */
export function foundThen(ready: Ready, planned: Step): StepId | null {
  const out = ready.tracing.log.findLast((entry) => !entry.struck && entry.step in OURS_FIRST)?.step;
  const ours = planned.id === PUT_BACK && out !== undefined ? OURS_FIRST[out] : undefined;
  if (ours !== undefined && undone(ready, ours) !== null) return ours;
  const last = ready.tracing.log.findLast((entry) => !entry.struck);
  const found = last ? cameOf(last).flatMap((outcome) => THEN[last.step]?.[outcome] ?? []) : [];
  return found.find((id) => undone(ready, id) !== null) ?? null;
}
