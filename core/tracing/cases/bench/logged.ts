import { leftOutAfter } from '../../live/configuration.ts';
import { loanerFor } from '../../live/gates/available.ts';
import type { FaultModel, LoggedStep, Step, TracingCase } from '../../live/types.ts';
import { outcomesNamed, stepNamed } from '../ids/names.ts';

/** Why an entry of a log cannot be taken: a step or an outcome that nobody knows. */
export type BadEntry = { readonly is: 'unknown-id' | 'unknown-outcome'; readonly at: string };

/**
 * The case after one more entry, "step:outcome" (or "step:finding+finding" of a look at several places) with ":back" or ":stays" where that was done otherwise than usual: what
 * it took out is put back, or stays out (or ours in) where all works so. Refused as a `BadEntry`, `at` the entry as written.
 */
export function afterEntry(model: FaultModel, tracing: TracingCase, entry: string): TracingCase | BadEntry {
  const [id = '', written = '', left] = entry.split(':');
  const named = stepNamed(model, id);
  if (named.is !== 'here') return { is: 'unknown-id', at: entry };
  const [outcome, ...also] = outcomesNamed(model, id, written) ?? [];
  if (outcome === undefined) return { is: 'unknown-outcome', at: entry };
  const { step } = named;
  const works = step.outcomes.some((one) => one.id === outcome && one.meaning.means === 'works');
  const stays = left === undefined ? works && step.takesOut.length > 0 : left === 'stays';
  const logged: LoggedStep = {
    entry: `e${tracing.log.length + 1}`,
    step: step.id,
    outcome,
    ...(also.length > 0 && { also }),
    handsOn: step.handsOn,
    waiting: step.waiting,
    loaners: partsUsed(model, tracing, step),
    leftOut: leftOutAfter(model, tracing, step, stays),
    struck: false,
  };
  return { ...tracing, log: [...tracing.log, logged] };
}

/** The wall's parts that go into the machine, or onto the rig, for a step: those that would be taken now. */
export function partsUsed(model: FaultModel, tracing: TracingCase, step: Step): LoggedStep['loaners'] {
  const kinds = [step.handling.borrows, ...step.handling.alsoBorrows];
  return kinds.flatMap((kind) => {
    const found = kind !== null && model.badLoaner[kind] ? loanerFor(tracing, kind) : null;
    return found && 'loaner' in found
      ? [{ id: found.loaner.id, kind: found.loaner.kind, standing: found.loaner.standing }]
      : [];
  });
}
