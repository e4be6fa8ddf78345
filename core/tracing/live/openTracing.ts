import { Memory } from './memory.ts';
import type { FaultModel, ModelData } from './types.ts';

/**
 * Opens a model for tracing: the one object that owns what is worked out of it and kept. A model is opened once and used
 * for many cases; one that was changed in any way is opened anew, with nothing known.
 */
export function openTracing(data: ModelData): FaultModel {
  const model = { ...data, memory: new Memory() };
  model.memory.belongTo(model);
  return model;
}
