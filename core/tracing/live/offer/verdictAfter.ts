import { suspectsOf } from '../belief/belief.ts';
import type { Posterior } from '../belief/posterior.ts';
import { posteriorOf } from '../belief/posterior.ts';
import { readGroups } from '../readGroups.ts';
import type {
  EvidenceEntry,
  Fault,
  FaultModel,
  LoggedStep,
  Outcome,
  Step,
  StepId,
  Suspect,
  TracingCase,
  Verdict,
} from '../types.ts';

/** A part is called confirmed only while what the log shows leaves it at least this likely: by its own evidence, on the rig, both ways. */
const PROVED_FROM = 0.97;
const RIG_FROM = 0.97;
const BOTH_WAYS_FROM = 0.985;
/** All works and something was mended, by whatever handling: cured from this chance on. */
const MENDED_FROM = 0.9;
/** It works: what was touched is named, or cured, only while that is the likelier reason… */
const NAMED_FROM = 0.5;
/** …and the trial itself spoke for it: the odds rose at least so many times. A quiet trial of what comes and goes names nothing. */
export const SPEAKS_FROM = 3;
/** What a loaner in its place shows to be at fault, but no part is: the tracing goes on to what mends it. */
const NO_PART: readonly Fault['part'][] = ['software', 'settings', 'none', 'home'];

type Found = { readonly entry: LoggedStep; readonly step: Step; readonly outcome: Outcome };

/**
 * What the log so far allows to be said. A part is named when it works without it, confirmed in one of three ways,
 * or nothing is to blame because a handling cured it. Without such an outcome it is traced on.
 */
export function verdictAfter(
  model: FaultModel,
  tracing: TracingCase,
  posterior: Posterior = posteriorOf(model, tracing),
): Verdict {
  const found = tracing.log.flatMap((entry) => foundIn(model, entry));
  const suspects = suspectsOf(model, posterior);
  const last = found.at(-1);
  if (!last) return { verdict: 'tracing' };
  return (
    ownEvidence(model, found, suspects) ??
    onTheRig(model, found, suspects) ??
    worked(model, tracing, found, suspects) ??
    mendedByNow(model, found, suspects) ??
    notReproduced(model, tracing, found, suspects) ?? { verdict: 'tracing' }
  );
}

function foundIn(model: FaultModel, entry: LoggedStep): Found[] {
  const step = entry.struck ? undefined : model.steps[model.stepIndex.get(entry.step) ?? -1];
  const outcome = step?.outcomes.find((one) => one.id === entry.outcome);
  return step && outcome ? [{ entry, step, outcome }] : [];
}

const evidenceOf = (found: readonly Found[]): readonly EvidenceEntry[] =>
  found.map(({ entry, step, outcome }) => ({ entry: entry.entry, step: step.id, outcome: outcome.id }));

const likeliest = (suspects: readonly Suspect[], among: (fault: string) => boolean): Suspect | undefined =>
  suspects.filter((suspect) => among(suspect.fault)).toSorted((a, b) => b.p + b.mended - a.p - a.mended)[0];

/** Chance that one of these faults is, or was, there. */
const chanceOf = (suspects: readonly Suspect[], among: (fault: string) => boolean): number =>
  suspects.reduce((sum, suspect) => sum + (among(suspect.fault) ? suspect.p + suspect.mended : 0), 0);

function ownEvidence(model: FaultModel, found: readonly Found[], suspects: readonly Suspect[]): Verdict | null {
  for (const one of found.toReversed()) {
    const { meaning } = one.outcome;
    if (meaning.means !== 'evidence') continue;
    const suspect = likeliest(suspects, (fault) => meaning.of.includes(fault));
    if (!suspect) continue;
    const { part: blamed } = faultOf(model, suspect.fault);
    const sure = chanceOf(suspects, (fault) => meaning.of.includes(fault) && faultOf(model, fault).part === blamed);
    if (sure < PROVED_FROM) continue;
    const { part } = faultOf(model, suspect.fault);
    return {
      verdict: 'confirmed',
      way: 'own-evidence',
      part,
      fault: suspect.fault,
      p: suspect.p,
      evidence: evidenceOf([one]),
    };
  }
  return null;
}

/** Every other part in the rig was known-good: what fails there is the part itself. */
function onTheRig(model: FaultModel, found: readonly Found[], suspects: readonly Suspect[]): Verdict | null {
  const rig = found.findLast(
    (one) =>
      one.step.onRig !== null &&
      (one.outcome.meaning.means === 'fails-on-rig' || one.outcome.meaning.means === 'works-on-rig'),
  );
  if (rig?.outcome.meaning.means !== 'fails-on-rig') return null;
  const circuits = rig.step.onRig ?? [];
  const inside = (fault: string) => faultOf(model, fault).circuits.some((circuit) => circuits.includes(circuit));
  const sure = suspects.filter((suspect) => inside(suspect.fault)).reduce((sum, suspect) => sum + suspect.p, 0);
  const suspect = likeliest(suspects, inside);
  if (!suspect || sure < RIG_FROM) return null;
  return {
    verdict: 'confirmed',
    way: 'second-rig',
    part: faultOf(model, suspect.fault).part,
    fault: suspect.fault,
    p: suspect.p,
    evidence: evidenceOf([rig]),
  };
}

/** It worked: with a part out or replaced that part is named, and confirmed when it fails again with the part back in. */
function worked(
  model: FaultModel,
  tracing: TracingCase,
  found: readonly Found[],
  suspects: readonly Suspect[],
): Verdict | null {
  const at = found.findLastIndex((one) => one.outcome.meaning.means === 'works' && one.step.id !== 'put-back');
  const one = found[at];
  if (!one) return null;
  const back = found.slice(at + 1).findLast((later) => later.step.id === 'put-back');
  const touched = (fault: string) =>
    faultOf(model, fault).circuits.some((circuit) => one.step.takesOut.includes(circuit));
  if (one.step.takesOut.length > 0 && one.step.kind !== 'reseat' && one.step.kind !== 'setting') {
    const suspect = likeliest(suspects, touched);
    if (!suspect) return null;
    const { part } = faultOf(model, suspect.fault);
    const blamed = (fault: string) => touched(fault) && faultOf(model, fault).part === part;
    const sure = chanceOf(suspects, blamed);
    if (NO_PART.includes(part) || sure < NAMED_FROM || !spoke(model, tracing, one, blamed)) return null;
    if (back?.outcome.meaning.means === 'fails-again' && sure >= BOTH_WAYS_FROM)
      return {
        verdict: 'confirmed',
        way: 'both-ways',
        part,
        fault: suspect.fault,
        p: suspect.p,
        evidence: evidenceOf([one, back]),
      };
    if (back?.outcome.meaning.means === 'works')
      return { verdict: 'cured', by: 'reseating', fault: null, p: suspect.mended, evidence: evidenceOf([one, back]) };
    return {
      verdict: 'named',
      part,
      fault: suspect.fault,
      p: suspect.p + suspect.mended,
      evidence: evidenceOf([one]),
      confirmBy: confirmingSteps(model, part),
    };
  }
  return cured(model, tracing, found, one, suspects);
}

/** It works with everything of the owner's in: what the handlings before could mend has been mended, whichever of them did. */
function mendedByNow(model: FaultModel, found: readonly Found[], suspects: readonly Suspect[]): Verdict | null {
  const last = found.at(-1);
  if (last?.outcome.meaning.means !== 'works' || last.step.takesOut.length > 0 || last.entry.leftOut.length > 0)
    return null;
  const mended = suspects.reduce((sum, one) => sum + one.mended, 0);
  const top = suspects.toSorted((a, b) => b.mended - a.mended)[0];
  if (!top || mended < MENDED_FROM) return null;
  const { mendedBy } = faultOf(model, top.fault);
  const did = found.filter((one) => (one.step.mends[top.fault] ?? one.step.mendsAfter[top.fault] ?? 0) > 0);
  const by = mendedBy === 'part' || mendedBy === 'advice' ? 'reseating' : mendedBy;
  return {
    verdict: 'cured',
    by,
    fault: top.mended >= NAMED_FROM ? top.fault : null,
    p: mended,
    evidence: evidenceOf([...did, last]),
  };
}

/** A fault that would have stayed hidden in no more than this share of such trials could not be reproduced. */
const HIDDEN_AT_MOST = 0.2;
const STILL_LEFT = 0.05;

/** It works here, was watched for long against how often it was told to fail, and never failed: not reproduced, not excluded. */
function notReproduced(
  model: FaultModel,
  tracing: TracingCase,
  found: readonly Found[],
  suspects: readonly Suspect[],
): Verdict | null {
  const rate =
    tracing.told.rate ?? model.often.find((one) => one.rate && tracing.told.often.includes(one.id))?.rate ?? null;
  const here = readGroups(model, tracing.seen);
  if (!rate || !here.includes('NF') || here.length > 1) return null;
  const watched = found.filter((one) => one.step.exposure !== null && one.step.kind === 'load');
  if (watched.some((one) => one.outcome !== one.step.outcomes[one.step.normal])) return null;
  const hidden = watched.reduce((p, { step: { exposure } }) => {
    const hours = (exposure?.loadHours ?? 0) + (exposure?.idleHours ?? 0);
    return p * (1 - rate.perStart) ** (exposure?.starts ?? 0) * Math.exp(-rate.perHour * hours);
  }, 1);
  if (hidden > HIDDEN_AT_MOST) return null;
  return {
    verdict: 'not-reproduced',
    hiddenChance: hidden,
    left: suspects.filter((one) => one.p >= STILL_LEFT).map((one) => one.fault),
    evidence: evidenceOf(watched),
  };
}

const odds = (p: number): number => p / Math.max(1e-12, 1 - p);

/** Did this step itself speak for these faults: are their odds well above what they were before it? */
function spoke(model: FaultModel, tracing: TracingCase, one: Found, blamed: (fault: string) => boolean): boolean {
  const at = tracing.log.findIndex((entry) => entry.entry === one.entry.entry);
  const chanceAt = (log: readonly LoggedStep[]) =>
    chanceOf(suspectsOf(model, posteriorOf(model, { ...tracing, log }, false)), blamed);
  return odds(chanceAt(tracing.log.slice(0, at + 1))) >= SPEAKS_FROM * odds(chanceAt(tracing.log.slice(0, at)));
}

function cured(
  model: FaultModel,
  tracing: TracingCase,
  found: readonly Found[],
  one: Found,
  suspects: readonly Suspect[],
): Verdict | null {
  const later = found.slice(found.indexOf(one) + 1);
  if (later.some((again) => ['same', 'worse', 'fails-again'].includes(again.outcome.meaning.means))) return null;
  const mends = (fault: string) => (one.step.mends[fault] ?? 0) > 0;
  if (chanceOf(suspects, mends) < NAMED_FROM || !spoke(model, tracing, one, mends)) return null;
  if (one.step.kind === 'sweep')
    return { verdict: 'cured', by: 'sweep', fault: null, p: 1, evidence: evidenceOf([one]) };
  const mended = suspects
    .filter((suspect) => (one.step.mends[suspect.fault] ?? 0) > 0)
    .toSorted((a, b) => b.mended - a.mended)[0];
  const by = mended ? faultOf(model, mended.fault).mendedBy : 'reseating';
  return {
    verdict: 'cured',
    by: by === 'part' || by === 'advice' ? 'reseating' : by,
    fault: mended?.fault ?? null,
    p: mended?.mended ?? 0,
    evidence: evidenceOf([one]),
  };
}

/** The steps that confirm a part which was only named: back in, or on the second rig. */
export function confirmingSteps(model: FaultModel, part: Fault['part']): readonly StepId[] {
  return model.steps
    .filter(
      (step) =>
        step.id === 'put-back' ||
        (step.confirming && (step.handling.intoRig === part || step.handling.borrows === part)),
    )
    .map((step) => step.id);
}

function faultOf(model: FaultModel, id: string): Fault {
  const fault = model.faults[model.faultIndex.get(id) ?? -1];
  if (!fault) throw new Error(`the model has no fault ${id}`);
  return fault;
}
