import type { FaultId, StepId } from '../ids.ts';
import type { FaultModel } from './faultModel.ts';

/** Ids that the program itself goes by: a model without one of them is refused when it is loaded. */
export const NOTHING_WRONG = 'nothing-wrong';
export const MADE_BY_US = 'made-by-us';
export const WATCH_START = 'watch-start';
export const PUT_BACK = 'put-back';
export const LOG_READ = 'log-read';
export const DRIVE_IMAGE = 'drive-image';

export const SPECIAL_FAULTS: readonly FaultId[] = [NOTHING_WRONG, MADE_BY_US];
export const SPECIAL_STEPS: readonly StepId[] = [WATCH_START, PUT_BACK, LOG_READ, DRIVE_IMAGE];

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
 * @throws {RangeError} for one that it does not have: a defect. For what a log names: `model.stepIndex.get`.
 */
export function stepNumber(model: FaultModel, id: StepId): number {
  const number = model.stepIndex.get(id);
  if (number === undefined) throw new RangeError(`the fault model has no step ${id}`);
  return number;
}
