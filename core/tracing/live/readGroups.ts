import type { ToldSeen } from './api.ts';
import { GROUPS } from './groups.ts';
import type { FaultModel, Group, SymptomId } from './types.ts';

const known = new WeakMap<FaultModel, ReadonlyMap<SymptomId, readonly Group[]>>();

function groupsOf(model: FaultModel): ReadonlyMap<SymptomId, readonly Group[]> {
  const made = known.get(model) ?? new Map(model.symptoms.map(({ id, groups }) => [id, groups]));
  known.set(model, made);
  return made;
}

/** Symptom groups of told or seen terms, in the model's order; terms that are not in the model say nothing. */
export function readGroups(model: FaultModel, symptoms: readonly SymptomId[]): readonly Group[] {
  const groups = groupsOf(model);
  const named = symptoms.flatMap((symptom) => groups.get(symptom) ?? []);
  return GROUPS.filter((group) => named.includes(group));
}

/** What was told beside what was seen, in the same terms. Nothing seen yet differs from nothing. */
export function compareToldSeen(model: FaultModel, told: readonly SymptomId[], seen: readonly SymptomId[]): ToldSeen {
  const groupsTold = readGroups(model, told);
  const groupsSeen = readGroups(model, seen);
  return {
    agree: told.filter((id) => seen.includes(id)),
    onlyTold: told.filter((id) => !seen.includes(id)),
    onlySeen: seen.filter((id) => !told.includes(id)),
    groupsTold,
    groupsSeen,
    differ:
      seen.length > 0 &&
      (groupsSeen.some((group) => !groupsTold.includes(group)) ||
        groupsTold.every((group) => !groupsSeen.includes(group))),
  };
}
