import { STANDARD_MODEL_FILES, standardModel } from '../loading/standardModel.ts';
import type { FaultModel, ModelRefusal } from '../types.ts';
import type { PriorTally } from './closedTracing.ts';
import { changeModel } from './editModel.ts';
import { learnPriors, type MovedPrior } from './learnPriors.ts';
import type { ModelDifference, ModelFiles } from './modelFiles.ts';

/** What a shop made of the model as delivered: its changes, and what it took over from its own jobs. */
export type OwnModel = { readonly changes: readonly ModelDifference[]; readonly learnt: PriorTally | null };

export type ModelInUse = {
  readonly files: ModelFiles;
  readonly model: FaultModel;
  readonly moved: readonly MovedPrior[];
  /** The shop's changes do not hold together with the model as delivered now: the latter is in use. */
  readonly refused: ModelRefusal | null;
};

/** The model the shop works with: as delivered, with its changes, its priors moved by its own jobs. */
export function modelInUse({ changes, learnt }: OwnModel): ModelInUse {
  const changed = changes.length === 0 ? null : changeModel(STANDARD_MODEL_FILES, changes);
  const refused = changed && 'refused' in changed ? changed : null;
  const { files, model } =
    changed && !('refused' in changed) ? changed : { files: STANDARD_MODEL_FILES, model: standardModel() };
  if (!learnt) return { files, model, moved: [], refused };
  return { files, refused, ...learnPriors(model, learnt) };
}
