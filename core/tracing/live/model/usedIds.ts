import type { FaultId, GateId, OutcomeId, StepId, SymptomId } from '../ids.ts';
import type { FaultModel } from './faultModel.ts';
import { ModelFault } from './refusal.ts';
import { knownStep } from './special.ts';

/** Outcomes by step. */
export type OutcomesByStep = { readonly [step: StepId]: readonly OutcomeId[] };

/**
 * Ids that a file of the program goes by. A model without one of them would let that part of the program pass over it in
 * silence, so it is refused when it is loaded.
 */
export type UsedIds = {
  readonly steps?: readonly StepId[];
  readonly shown?: OutcomesByStep;
  readonly faults?: readonly FaultId[];
  readonly symptoms?: readonly SymptomId[];
  /** Terms of what was changed, told beside the symptoms. */
  readonly changes?: readonly string[];
  readonly often?: readonly string[];
  readonly states?: readonly string[];
  readonly handlings?: readonly string[];
  readonly gates?: readonly GateId[];
};

/**
 * Does the model have all that `file` goes by?
 * @throws {ModelFault} naming file, field, the id and what goes by it; `loadFaultModel` makes a refusal of it.
 */
export function checkUsed(model: FaultModel, by: string, used: UsedIds): void {
  const all = (file: string, field: string, has: (id: string) => boolean, ids: readonly string[] = []) => {
    const missing = ids.find((id) => !has(id));
    if (missing !== undefined) throw new ModelFault(file, field, `no ${missing}: ${by} goes by it`);
  };
  const within = (list: readonly { readonly id: string }[]) => (id: string) => list.some((one) => one.id === id);
  const { shown = {} } = used;
  all('steps.json', 'steps', (id) => model.stepIndex.has(id), [...(used.steps ?? []), ...Object.keys(shown)]);
  for (const [id, outcomes] of Object.entries(shown))
    all('steps.json', `steps ${id}.outcomes`, within(knownStep(model, id)?.outcomes ?? []), outcomes);
  all('faults.json', 'faults', (id) => model.faultIndex.has(id), used.faults);
  all('symptoms.json', 'symptoms', within(model.symptoms), used.symptoms);
  all('told.json', 'evidence', within(model.evidence), used.changes);
  all('told.json', 'often', within(model.often), used.often);
  all('assembly.json', 'states', within(model.states), used.states);
  all('handlings.json', 'handlings', (id) => Object.hasOwn(model.handlings, id), used.handlings);
  all('safety.json', 'rules', within(model.gates), used.gates);
}
