import { z } from 'zod';
import delivered from '../../../../assets/fault-model/aliases.json' with { type: 'json' };
import type { Caution, OutcomeId, StepId } from '../types.ts';

const renamings = z.record(z.string(), z.string());

/** Ids that were renamed, old → new, by what they are ids of; an outcome is written with its step, `step:old`. */
const zAliases = z.strictObject({
  note: z.string(),
  /** Fields of `deeds.json`. */
  fields: renamings,
  steps: renamings,
  outcomes: renamings,
  groups: renamings,
  cautions: renamings,
  profiles: renamings,
  /** Steps that bench cases speak of under an id of their own: that id → the model's. */
  is: renamings,
  /** Steps that came later: the kinds of the bench cases that they fall under. */
  kinds: z.record(z.string(), z.array(z.string())),
});

/** A defect, not a refusal, where the delivered file does not hold: it comes with the program. */
export const ALIASES = zAliases.parse(delivered);

/** What an id can be of, where ids were renamed; a field’s name is one of a kind of its own. */
export type Renamed = 'fields' | 'steps' | 'outcomes' | 'groups' | 'cautions' | 'profiles';

const find = (kind: Renamed, id: string): string | undefined =>
  Object.hasOwn(ALIASES[kind], id) ? ALIASES[kind][id] : undefined;

/** The id that is in use now for one that may be an old one. Outcomes: `currentOutcome`. */
export const currentId = (kind: Exclude<Renamed, 'outcomes'>, id: string): string => find(kind, id) ?? id;

/** The step's id now; also for one that bench cases know under an id of their own. */
export function currentStep(id: StepId): StepId {
  const now = currentId('steps', id);
  return Object.hasOwn(ALIASES.is, now) ? (ALIASES.is[now] ?? now) : now;
}

/** The outcome's id now, for a step and an outcome that may both be written with old ids. */
export const currentOutcome = (step: StepId, outcome: OutcomeId): OutcomeId =>
  find('outcomes', `${step}:${outcome}`) ?? find('outcomes', `${currentStep(step)}:${outcome}`) ?? outcome;

const LETTERS = new Map(Object.entries(ALIASES.cautions).map(([letter, caution]) => [caution, letter]));

/** The letter that bench cases write for a caution; a caution that came later is its own word. */
export const cautionLetter = (caution: Caution): string => LETTERS.get(caution) ?? caution;
