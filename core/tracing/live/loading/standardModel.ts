import assembly from '../../../../assets/fault-model/assembly.json' with { type: 'json' };
import bench from '../../../../assets/fault-model/bench.json' with { type: 'json' };
import dangers from '../../../../assets/fault-model/dangers.json' with { type: 'json' };
import deeds from '../../../../assets/fault-model/deeds.json' with { type: 'json' };
import faults from '../../../../assets/fault-model/faults.json' with { type: 'json' };
import handlings from '../../../../assets/fault-model/handlings.json' with { type: 'json' };
import pairs from '../../../../assets/fault-model/pairs.json' with { type: 'json' };
import safety from '../../../../assets/fault-model/safety.json' with { type: 'json' };
import shop from '../../../../assets/fault-model/shop.json' with { type: 'json' };
import steps from '../../../../assets/fault-model/steps.json' with { type: 'json' };
import symptoms from '../../../../assets/fault-model/symptoms.json' with { type: 'json' };
import told from '../../../../assets/fault-model/told.json' with { type: 'json' };
import values from '../../../../assets/fault-model/values.json' with { type: 'json' };
import type { FaultModel } from '../types.ts';
import { loadFaultModel } from './loadFaultModel.ts';

/** The fault model's files as delivered, by file name. */
export const STANDARD_MODEL_FILES: { readonly [file: string]: unknown } = {
  'faults.json': faults,
  'symptoms.json': symptoms,
  'told.json': told,
  'pairs.json': pairs,
  'assembly.json': assembly,
  'handlings.json': handlings,
  'steps.json': steps,
  'dangers.json': dangers,
  'safety.json': safety,
  'deeds.json': deeds,
  'shop.json': shop,
  'bench.json': bench,
  'values.json': values,
};

/**
 * The model as delivered, opened anew: whoever asks keeps it.
 * @throws {Error} where it is refused: a defect, for that it loads is a test.
 */
export function standardModel(): FaultModel {
  const model = loadFaultModel(STANDARD_MODEL_FILES);
  if ('refused' in model) throw new Error(`${model.file}: ${model.field}: ${model.because}`);
  return model;
}
