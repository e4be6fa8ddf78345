import type { ToldSeen } from './api.ts';
import { GROUPS } from './groups.ts';
import { WATCH_START } from './model/special.ts';
import type { FaultModel, Group, SymptomId, TracingCase } from './types.ts';

/** Symptom groups of told or seen terms, in the model's order; terms that are not in the model say nothing. */
export function readGroups(model: FaultModel, symptoms: readonly SymptomId[]): readonly Group[] {
  if (symptoms.length === 0) return [];
  const named = model.symptoms.flatMap(({ id, groups }) => (symptoms.includes(id) ? groups : []));
  return GROUPS.filter((group) => named.includes(group));
}

/** As `readGroups`, of what was told: what is only wanted ("the data above all") says nothing beside what is wrong. */
export function groupsTold(model: FaultModel, told: readonly SymptomId[]): readonly Group[] {
  const wrong = told.filter((id) => !model.symptoms.some((one) => one.id === id && one.aside));
  return readGroups(model, wrong.length > 0 ? wrong : told);
}

/**
 * The group that a machine shows on the bench: what was logged of its first start, where that was watched, else all that
 * the terms seen may mean. Empty before anything was seen.
 */
export function groupsSeen(model: FaultModel, { seen, log }: Pick<TracingCase, 'seen' | 'log'>): readonly Group[] {
  const watched = log.findLast((entry) => !entry.struck && entry.step === WATCH_START);
  const logged = GROUPS.filter((group) => group === watched?.outcome);
  return logged.length > 0 ? logged : readGroups(model, seen);
}

/**
 * The groups that a step may be about now: what it shows here, and what was told of it. A term that may mean several
 * things means the one that was watched here, or seen.
 */
export function groupsNow(model: FaultModel, tracing: TracingCase): readonly Group[] {
  const beside = (terms: readonly SymptomId[], known: readonly Group[]) =>
    terms.map((term) => readGroups(model, [term])).filter((groups) => !groups.some((group) => known.includes(group)));
  const watched = groupsSeen(model, tracing);
  const seen = [...watched, ...beside(tracing.seen, watched).flat()];
  const told = beside(tracing.told.symptoms, seen).flat();
  return GROUPS.filter((group) => seen.includes(group) || told.includes(group));
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
