import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { editionInUse } from './useModel.ts';

/** Goes back to the edition before; from the first one to the model as delivered. */
export const goBackToModel = shopCommand(
  'go-back-to-model',
  z.strictObject({}),
  () => ({}),
  (view) => {
    const now = editionInUse(view.shop);
    return now
      ? accept({ stream: 'shop', kind: 'model-gone-back', body: { from: now.name } })
      : refuse('model-is-as-delivered');
  },
);
