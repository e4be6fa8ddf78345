import type { FaultModel, TracingCase } from '../types.ts';

/**
 * How many times likelier each fault is by the very terms that were told and seen, beyond their groups: "it asks for a
 * key" is more than "it stops during the start". A term that was both told and seen counts once.
 */
export function byTerms(model: FaultModel, { told, seen }: TracingCase): Float64Array {
  const named = new Set([...told.symptoms, ...seen]);
  const terms = model.symptoms.filter(({ id }) => named.has(id));
  return Float64Array.from(model.faults, ({ id }) =>
    terms.reduce((times, { multiplies, others }) => times * (multiplies[id] ?? others), 1),
  );
}
