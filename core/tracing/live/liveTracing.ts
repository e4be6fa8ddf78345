import type { LiveTracing } from './api.ts';
import { belief } from './belief/belief.ts';
import { loadFaultModel } from './loading/loadFaultModel.ts';
import { knownStep } from './model/special.ts';
import { offerStep } from './offer/offerStep.ts';
import { openStates } from './offer/openStates.ts';
import { reasonFor } from './offer/reasonFor.ts';
import { compareToldSeen, readGroups } from './readGroups.ts';
import { verdictAfter } from './verdict/verdictAfter.ts';

/** The live tracing engine, whole. */
export const liveTracing: LiveTracing = {
  loadFaultModel,
  readGroups,
  compareToldSeen,
  belief,
  offerStep,
  reasonFor,
  verdictAfter: (model, tracing) => verdictAfter(model, tracing),
  openStates,
  knows: (model, { step, outcome }) => knownStep(model, step)?.outcomes.some((one) => one.id === outcome) ?? false,
};
