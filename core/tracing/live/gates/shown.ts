import { cameOf } from '../cameOf.ts';
import type { OutcomeId, StepId, SymptomId, TracingCase } from '../types.ts';

/** Was one of these terms told, or seen at the bench? */
export const isNamed = ({ told, seen }: TracingCase, terms: readonly SymptomId[]): boolean =>
  terms.some((term) => told.symptoms.includes(term) || seen.includes(term));

/** Did one of these steps show one of its outcomes, struck entries apart? */
export const hasShown = (
  { log }: Pick<TracingCase, 'log'>,
  came: { readonly [step: StepId]: readonly OutcomeId[] },
): boolean =>
  log.some((entry) => !entry.struck && cameOf(entry).some((outcome) => came[entry.step]?.includes(outcome) === true));

/** Told so, it fails every time. */
export const STEADY = ['every-time', 'always-on'];

/** Was it told to fail every time? A trial that works tells at once then. */
export const isSteady = ({ told }: Pick<TracingCase, 'told'>): boolean => told.often.some((id) => STEADY.includes(id));
