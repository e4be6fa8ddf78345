import aliases from '../../assets/fault-model/aliases.json' with { type: 'json' };
import type { Logged } from './state.ts';

const turned = (renamings: Readonly<Record<string, string>>): ReadonlyMap<string, string> =>
  new Map(Object.entries(renamings).map(([old, now]) => [now, old]));

const STEPS = new Map([...turned(aliases.steps), ...turned(aliases.is)]);
const OUTCOMES: Readonly<Record<string, string>> = aliases.outcomes;

/** A step of the fault model under the name that this referee and the bench cases know it by. */
export const caseStep = (step: string): string => STEPS.get(step) ?? step;

/** An entry of a log in the names that this referee and the bench cases know. */
export function caseEntry({ step, outcome }: Logged): Logged {
  const old = caseStep(step);
  const renamed = Object.keys(OUTCOMES).find(
    (key) => OUTCOMES[key] === outcome && (key.startsWith(`${old}:`) || key.startsWith(`${step}:`)),
  );
  return { step: old, outcome: renamed?.slice(renamed.indexOf(':') + 1) ?? outcome };
}
