import type { ModelRefusal } from '../types.ts';

/** Says what is wrong with a fault model: which file, which field, why. */
export class ModelFault extends Error {
  readonly refusal: ModelRefusal;

  constructor(file: string, field: string, because: string) {
    super(`${file}: ${field}: ${because}`);
    this.refusal = { refused: 'fault-model', file, field, because };
  }
}
