import { ModelFault } from '../model/refusal.ts';
import { isDeed, THE_END } from '../safety/deeds.ts';
import { plainDeeds } from '../safety/plainDeeds.ts';
import type { FaultModel } from '../types.ts';

/**
 * What is said to be done is known, and no step leaves out what its own fields give away.
 * @throws {ModelFault} naming file, field and reason; `loadFaultModel` makes a refusal of it.
 */
export function checkDeeds({ steps, work }: FaultModel): void {
  const written = [
    ...steps.map(({ id, deeds }) => ({ field: `steps ${id}`, deeds })),
    ...[...work.known].map(([id, { deeds }]) => ({ field: `work ${id}`, deeds })),
    ...Object.entries(work.others).map(([kind, { deeds }]) => ({ field: `others.${kind}`, deeds })),
  ];
  for (const { field, deeds } of written) {
    const strange = deeds.find((deed) => !isDeed(deed) || deed === THE_END);
    if (strange !== undefined) throw new ModelFault('deeds.json', field, `no deed ${strange}`);
  }
  for (const step of steps) {
    const unsaid = plainDeeds(step).find((deed) => !step.deeds.includes(deed));
    if (unsaid !== undefined)
      throw new ModelFault('deeds.json', `steps ${step.id}`, `it does ${unsaid} and does not say so`);
  }
}
