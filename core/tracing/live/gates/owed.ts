import { stepOf } from '../model/special.ts';
import type { Belief, FaultModel, NotOffered, Owed, Step, TracingCase } from '../types.ts';
import { owedBeforeSettling } from './gates.ts';

/** What safety asks for before a verdict may end the tracing, and what of it can be done now. `why`: as `whyNot`. */
export const owedNow = (
  model: FaultModel,
  tracing: TracingCase,
  suspects: Belief['suspects'],
  why: (step: Step) => NotOffered['why'] | null,
): readonly Owed[] =>
  owedBeforeSettling(model, tracing, suspects).map(({ gate, ways }) => ({
    gate: gate.id,
    steps: [...new Set(ways.flat())].map((id) => ({ step: id, why: why(stepOf(model, id)) })),
  }));

/** Steps that are owed, in the order in which they are tried. */
export const owedSteps = (owed: readonly Owed[]): readonly string[] =>
  owed.flatMap(({ steps }) => steps.map(({ step }) => step));
