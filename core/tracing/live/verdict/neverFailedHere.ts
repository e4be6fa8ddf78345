import { groupsSeen } from '../readGroups.ts';
import type { EngineVerdict, FaultModel, Suspect, TracingCase } from '../types.ts';
import { evidenceOf, foundIn } from './proof.ts';

/** A fault that would have stayed hidden in no more than this share of such trials could not be reproduced. Common practice, no source. */
const NOT_SEEN_AT_MOST = 0.2;
/** What is left possible is told the owner from this chance on. Common practice, no source. */
export const STILL_LEFT = 0.05;

type Suspects = readonly Suspect[];
type NotReproduced = Extract<EngineVerdict, { readonly verdict: 'not-reproduced' }>;

/** It works here, was watched for long against how often it was told to fail, and never failed: not reproduced, not excluded. */
export function notReproduced(model: FaultModel, tracing: TracingCase, suspects: Suspects): NotReproduced | null {
  const verdict = neverFailedHere(model, tracing, suspects);
  return verdict && verdict.hiddenChance <= NOT_SEEN_AT_MOST ? verdict : null;
}

/** As far as it was watched: never failed here, with the chance that what was told would have stayed hidden all the same. */
export function neverFailedHere(model: FaultModel, tracing: TracingCase, suspects: Suspects): NotReproduced | null {
  const rate =
    tracing.told.rate ?? model.often.find((one) => one.rate && tracing.told.often.includes(one.id))?.rate ?? null;
  const here = groupsSeen(model, tracing);
  if (!rate || !here.includes('not-shown') || here.length > 1) return null;
  const watched = foundIn(model, tracing.log).filter((one) => one.step.exposure !== null && one.step.kind === 'load');
  if (watched.length === 0 || watched.some((one) => one.outcome !== one.step.outcomes[one.step.normal])) return null;
  return {
    verdict: 'not-reproduced',
    hiddenChance: watched.reduce((p, { step: { exposure } }) => {
      const hours = (exposure?.loadHours ?? 0) + (exposure?.idleHours ?? 0);
      return p * (1 - rate.perStart) ** (exposure?.starts ?? 0) * Math.exp(-rate.perHour * hours);
    }, 1),
    left: suspects.filter((one) => one.p >= STILL_LEFT).map((one) => one.fault),
    evidence: evidenceOf(watched),
  };
}
