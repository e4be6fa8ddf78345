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
  'mem-pass': { errors: ['profile-off', 'modules-passed'] },
  'mem-night': { errors: ['profile-off', 'modules-passed'] },
  census: { 'wrong-slot': ['dimm-right'] },
  'slots-look': { 'wrong-slot': ['dimm-right'] },
  'scan-offline': { found: ['malware-off'] },
  'card-none': { works: ['card-loan', 'meas-rails'] },
};

/** The same where this was told: files that break on a disk that is well were broken before they got there. */
const THEN_IF_TOLD: { readonly [term: string]: typeof THEN } = {
  'files-broken': { 'drive-health': { clean: ['mem-pass'] } },
};

/** Between their own out and ours in nobody puts theirs back: what goes in first, by what came out. */
const OURS_FIRST: { readonly [out: StepId]: StepId } = { 'card-none': 'card-loan' };

/** What it goes by. */
export const FOUND_THEN: readonly UsedIds[] = [
  ...[THEN, ...Object.values(THEN_IF_TOLD)].map((then) => ({
    shown: Object.fromEntries(Object.entries(then).map(([step, found]) => [step, Object.keys(found)])),
    steps: Object.values(then).flatMap((found) => Object.values(found).flat()),
  })),
  { steps: Object.entries(OURS_FIRST).flat(), symptoms: Object.keys(THEN_IF_TOLD) },
];

/** The step that what was found last asks for by itself; null where nothing was found, or it cannot be done now. */
export function foundThen(ready: Ready, planned: Step): StepId | null {
  const out = ready.tracing.log.findLast((entry) => !entry.struck && entry.step in OURS_FIRST)?.step;
  const ours = planned.id === PUT_BACK && out !== undefined ? OURS_FIRST[out] : undefined;
  if (ours !== undefined && undone(ready, ours) !== null) return ours;
  const last = ready.tracing.log.findLast((entry) => !entry.struck);
  const told = ready.tracing.told.symptoms.flatMap((term) =>
    Object.entries(THEN_IF_TOLD).filter(([id]) => id === term),
  );
  const tables = [...told.map(([, then]) => then), THEN];
  const found = last
    ? cameOf(last).flatMap((outcome) => tables.flatMap((then) => then[last.step]?.[outcome] ?? []))
    : [];
  return found.find((id) => undone(ready, id) !== null) ?? null;
}
