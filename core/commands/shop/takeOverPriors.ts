import { z } from 'zod';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zTally } from './useModel.ts';

/** Takes over what the shop's own closed jobs say of how often each fault is met. Earlier learning is replaced, not added to. */
export const takeOverPriors = shopCommand(
  'take-over-priors',
  z.strictObject({ tally: zTally }),
  () => ({}),
  (_view, { tally }) =>
    tally.counted === 0
      ? refuse('nothing-to-learn-from', { ...tally.excluded })
      : accept({ stream: 'shop', kind: 'priors-learnt', body: tally }),
);

/** Puts the priors back to what is stated in the model. */
export const resetPriors = shopCommand(
  'reset-priors',
  z.strictObject({}),
  () => ({}),
  (view) =>
    view.shop.learnt
      ? accept({ stream: 'shop', kind: 'priors-reset', body: { counted: view.shop.learnt.counted } })
      : refuse('priors-are-as-stated'),
);
