import { nth } from '../../../figures/rows.ts';
import type { FaultId, StepId } from '../ids.ts';
import type { Fault } from './fault.ts';
import type { FaultModel } from './faultModel.ts';
import type { Step } from './step.ts';

/** Ids that the program itself goes by: a model without one of them is refused when it is loaded. */
export const NOTHING_WRONG = 'nothing-wrong';
export const MADE_BY_US = 'made-by-us';
export const WATCH_START = 'watch-start';
export const PUT_BACK = 'put-back';
export const LOG_READ = 'log-read';
export const DRIVE_IMAGE = 'drive-image';
export const DISK_LOCKED = 'disk-locked';
export const ASK_PART = 'ask-part';

export const SPECIAL_FAULTS: readonly FaultId[] = [NOTHING_WRONG, MADE_BY_US, DISK_LOCKED];
export const SPECIAL_STEPS: readonly StepId[] = [WATCH_START, PUT_BACK, LOG_READ, DRIVE_IMAGE, ASK_PART];

/**
 * The number of a fault of the model.
 * @throws {RangeError} for one that it does not have: a defect, for ids are refused where they enter.
 */
export function faultNumber(model: FaultModel, id: FaultId): number {
  const number = model.faultIndex.get(id);
  if (number === undefined) throw new RangeError(`the fault model has no fault ${id}`);
  return number;
}

/**
 * The number of a step of the model.
 * @throws {RangeError} for one that it does not have: a defect. For what a log or a person names: `knownStep`.
 */
export function stepNumber(model: FaultModel, id: StepId): number {
  const number = model.stepIndex.get(id);
  if (number === undefined) throw new RangeError(`the fault model has no step ${id}`);
  return number;
}

/** A fault that a journal, a case or a person names: none where the model does not know it. */
export function knownFault(model: FaultModel, id: FaultId): Fault | undefined {
  const number = model.faultIndex.get(id);
  return number === undefined ? undefined : model.faults[number];
}

/** A step of the model by its id. @throws {RangeError} as `stepNumber`. */
export const stepOf = (model: FaultModel, id: StepId): Step => nth(model.steps, stepNumber(model, id));

/** A step that a log, a case or a person names: none where the model does not know it, for journals outlive models. */
export function knownStep(model: FaultModel, id: StepId): Step | undefined {
  const number = model.stepIndex.get(id);
  return number === undefined ? undefined : model.steps[number];
}
