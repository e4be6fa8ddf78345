import { nth } from '../../../figures/rows.ts';
import { type Assembly, assemblyOf, movesBefore } from '../assembly.ts';
import { cameOf } from '../cameOf.ts';
import { leftBy, lookFrom, NOTHING_DONE } from '../configuration.ts';
import { maskOf } from '../model/circuits.ts';
import type { FindingRows } from '../model/faultModel.ts';
import { faultNumber, knownStep, stepNumber, WATCH_START } from '../model/special.ts';
import type { FaultModel, LoggedStep, Step, TracingCase } from '../types.ts';
import type { Condition } from './condition.ts';
import { asRepeat, findingsInPlace, inPlace } from './inPlace.ts';
import type { Prior } from './prior.ts';

/** What each step of the log says, and the entry that it was logged by, in order. */
export type LoggedConditions = { readonly conditions: readonly Condition[]; readonly entries: readonly LoggedStep[] };

/** Chance that what has to be opened now leaves a fault of our own. */
function oursChance(assembly: Assembly, open: readonly string[], step: Step): number {
  const { moves } = movesBefore(assembly, open, step);
  const clean = moves.reduce(
    (p, move) =>
      move.direction === 'open' ? p * (1 - (assembly.states.find((state) => state.id === move.state)?.ours ?? 0)) : p,
    1,
  );
  return 1 - clean;
}

/** The log's steps as conditions on the belief, in order; what was struck out, and what the model does not know, says nothing. */
export function conditionsOf(model: FaultModel, tracing: TracingCase, prior: Prior): LoggedConditions {
  const assembly = assemblyOf(model, tracing.switches);
  const conditions: Condition[] = [];
  const entries: LoggedStep[] = [];
  const loaners = loanerIds(model, tracing);
  const last = new Map<string, LoggedStep>();
  let open: readonly string[] = [];
  let left = NOTHING_DONE;
  for (const entry of tracing.log) {
    if (entry.struck) continue;
    const found = left;
    left = leftBy(model, left, entry);
    const step = knownStep(model, entry.step);
    if (!step) continue;
    const oursComes = oursChance(assembly, open, step);
    open = movesBefore(assembly, open, step).open;
    const outcome = step.outcomes.findIndex((each) => each.id === entry.outcome);
    if (step.id === WATCH_START || outcome < 0) continue;
    const looked = lookFrom(found, step, maskOf(entry.leftOut));
    const key = lookKey(step, looked.look);
    const s = stepNumber(model, step.id);
    const came = last.get(key);
    last.set(key, entry);
    if (step.places.length > 0) {
      const all = foundOrNot(findingsInPlace(model, prior, s, looked), model.findings[s] ?? [], entry, came);
      conditions.push(...all.map((one, at) => (at === 0 ? { ...one, oursComes } : one)));
      entries.push(...all.map(() => entry));
      continue;
    }
    const looks = inPlace(model, prior, s, looked);
    conditions.push({
      ...nth(came === undefined ? looks : asRepeat(model, step, looks, came.outcome), outcome),
      oursComes,
      loaners: entry.loaners.flatMap((used) => {
        const bad = model.badLoaner[used.kind];
        return bad ? [{ loaner: loaners.indexOf(used.id), actsAs: faultNumber(model, bad.actsAs) }] : [];
      }),
    });
    entries.push(entry);
  }
  return { conditions, entries };
}

/** One condition for each finding of a look at several places: it is there, or it is not; `before`: the same look earlier. */
const foundOrNot = (
  looks: readonly (readonly Condition[])[],
  findings: readonly FindingRows[],
  entry: LoggedStep,
  before: LoggedStep | undefined,
): readonly Condition[] =>
  findings.flatMap(({ outcome }, at): readonly Condition[] => {
    const there = cameOf(entry).includes(outcome);
    const condition = looks[at]?.[there ? 1 : 0];
    if (!condition) return [];
    const again = !before ? 'first' : cameOf(before).includes(outcome) === there ? 'same' : 'other';
    return [{ ...condition, again }];
  });

/** A step in one configuration: done again so, it is the same look once more. */
export const lookKey = (step: Step, look: number): string => `${step.id} ${look}`;

/** What came out last of each step of the log in each configuration. */
export function lastLooks(model: FaultModel, { conditions, entries }: LoggedConditions): ReadonlyMap<string, string> {
  return new Map(
    conditions.map((condition, k) => [
      lookKey(nth(model.steps, condition.step), condition.look),
      entries[k]?.outcome ?? '',
    ]),
  );
}

/** The loaners of the log that could be bad, in order of first use. */
export function loanerIds(model: FaultModel, tracing: TracingCase): readonly string[] {
  const used = tracing.log
    .filter((entry) => !entry.struck && model.stepIndex.has(entry.step))
    .flatMap((entry) => entry.loaners);
  return [...new Set(used.filter((each) => model.badLoaner[each.kind]).map((each) => each.id))];
}
