import { z } from 'zod';
import file from '../../../../assets/cases/steps-to-come.json' with { type: 'json' };

const zStepsToCome = z.object({ steps: z.record(z.string(), z.object({ outcomes: z.array(z.string()) })) });

/** Outcomes of the steps that bench cases speak of and the model may lack, by the cases' own id. */
export const STEPS_TO_COME: { readonly [step: string]: readonly string[] } = Object.fromEntries(
  Object.entries(zStepsToCome.parse(file).steps).map(([id, { outcomes }]) => [id, outcomes]),
);
