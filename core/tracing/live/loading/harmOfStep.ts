import type { ThingKind } from '../../../custody/part.ts';
import { CIRCUITS, type Circuit, maskOf } from '../model/circuits.ts';
import type { StepHarm } from '../model/step.ts';
import type { RawModel, RawStep } from './raw.ts';

/** The circuit that a kind of part is in; of what is in none the owner has none in the machine. */
export const circuitOf = (part: ThingKind): Circuit | undefined => CIRCUITS.find((circuit) => circuit === part);

/**
 * What a step can hurt, by fault: ours of the `borrowed` kinds, and the owner's own that is in circuit where it starts the
 * machine. A fault hurts only what it meets: on the machine, or on the rig with the owner's part that carries it.
 */
export function harmOfStep(
  raw: RawModel,
  step: RawStep,
  { borrowed, starts }: { readonly borrowed: ReadonlySet<ThingKind | null | undefined>; readonly starts: boolean },
): readonly StepHarm[] {
  const out = step.onRig ? ~maskOf(step.onRig) : maskOf(step.takesOut);
  return raw['dangers.json'].harm.flatMap(({ steps, whose, fault, part, chance }): readonly StepHarm[] => {
    const carrier = maskOf(raw['faults.json'].faults.find(({ id }) => id === fault)?.circuits ?? []);
    const circuit = circuitOf(part);
    const both = carrier | maskOf(circuit ? [circuit] : []);
    const theirs = { fault, part, whose: 'owner', meets: both } as const;
    if (whose === 'owner') return steps?.includes(step.id) ? [{ ...theirs, chance }] : [];
    const ours = borrowed.has(part) && (carrier & out) === 0 ? [{ fault, part, chance, meets: carrier }] : [];
    const atStarts = whose === 'either' && starts && step.onRig === null && (both & out) === 0;
    return atStarts ? [...ours, { ...theirs, chance: atSomeStarts(raw, step, chance) }] : ours;
  });
}

/** Chance that what has stood it so far is hurt by the starts of one step. */
function atSomeStarts(raw: RawModel, { exposure }: RawStep, chance: number): number {
  const once = chance * raw['values.json'].stood.share;
  return 1 - (1 - once) ** Math.max(1, exposure?.starts ?? 1);
}
