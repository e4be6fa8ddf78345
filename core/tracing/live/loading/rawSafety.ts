import { z } from 'zod';
import { CAUTIONS } from '../cautions.ts';
import { HARMS, SAFETY_FACTS } from '../gate.ts';
import { CIRCUITS } from '../model/circuits.ts';
import { OPENINGS } from '../safety/openings.ts';
import { chance, id, source } from './rawFields.ts';

const circuit = z.enum(CIRCUITS);
const caution = z.enum(CAUTIONS);

/** Without outcomes: whatever came of it. */
const cameSomehow = z.strictObject({ step: id, outcomes: z.array(id).min(1).optional() });
/** `DEEDS`, with `:kind` where a part is meant. */
const deeds = z.array(z.string().min(1));
/** Rules of safety: what steps do is held while this was told, found, known or is believed, until it was looked at. */
export const zSafety = z.strictObject({
  note: source,
  rules: z.array(
    z.strictObject({
      id,
      harm: z.enum(HARMS),
      deeds: deeds.min(1),
      spares: z.array(id).min(1).optional(),
      /** Symptoms told or seen, and histories told: one of them; and one of these too. */
      told: z.array(id).min(1).optional(),
      alsoTold: z.array(id).min(1).optional(),
      facts: z.array(z.enum(SAFETY_FACTS)).min(1).optional(),
      after: z.array(cameSomehow).min(1).optional(),
      found: z.array(cameSomehow).min(1).optional(),
      liftedBy: z.array(cameSomehow).min(1).optional(),
      whileIn: z.array(circuit).min(1).optional(),
      suspectIn: z.array(circuit).min(1).optional(),
      when: z.strictObject({ faults: z.array(id).min(1), atLeast: chance }).optional(),
      /** Empty: nothing opens it but the technician's own word, where that may. */
      until: z.array(z.array(cameSomehow).min(1)),
      source,
    }),
  ),
});

const WORK_KINDS = ['fitting', 'proof', 'cleaning', 'handling'] as const;
export const zDeeds = z.strictObject({
  note: source,
  /** What opening each assembly state does, null where it is none of these: every state has its line. */
  states: z.record(id, z.enum(OPENINGS).nullable()).default({}),
  /** What each step does, all that is the owner's being in circuit. */
  steps: z.array(z.strictObject({ id, deeds })),
  /** The same of work that is no step. */
  work: z.array(z.strictObject({ id, deeds, cautions: z.array(caution) })),
  /** What work does that has no line, by its kind. */
  others: z.record(z.enum(WORK_KINDS), z.strictObject({ deeds, cautions: z.array(caution) })),
});
