import type { ToldSeen } from './api.ts';
import { type FaultModel, GROUPS, type Group, type SymptomId } from './types.ts';

/** Symptom groups of told or seen terms, in the model's order; terms that are not in the model say nothing. */
export function readGroups(model: FaultModel, symptoms: readonly SymptomId[]): readonly Group[] {
  const named = new Set(model.symptoms.filter((each) => symptoms.includes(each.id)).flatMap((each) => each.groups));
  return GROUPS.filter((group) => named.has(group));
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
