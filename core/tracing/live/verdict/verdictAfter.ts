import { odds } from '../../../figures/odds.ts';
import { suspectsOf } from '../belief/belief.ts';
import type { Posterior } from '../belief/posterior.ts';
import { posteriorOf } from '../belief/posterior.ts';
import { PUT_BACK } from '../model/special.ts';
import type { EngineVerdict, Fault, FaultModel, LoggedStep, StepId, Suspect, TracingCase } from '../types.ts';
import { BELIEVED_FROM } from '../wayBelieved.ts';
import { blameAmong, faultOf, goneOf, isOutside, isPart, shareOf } from './blame.ts';
import { moreOf } from './elseWrong.ts';
import { notReproduced } from './neverFailedHere.ts';
import { CONFIRMED_FROM, evidenceOf, type Found, foundIn, NAMED_FROM, pointed, proved } from './proof.ts';
import { toldApart } from './sweep.ts';
import { HIDDEN_AT_MOST, hiddenChance, mostlyIntermittent, watchSince } from './watch.ts';

/** All works and something was mended, by whatever handling: cured from this chance on. Common practice, no source. */
export const MENDED_FROM = 0.9;
/**
 * The trial itself spoke for what is named or cured: the odds rose at least so many times (3: "substantial" begins at 3.2 in
 * Jeffreys, Theory of Probability, 1961, appendix B, from memory). A quiet trial of what comes and goes names nothing.
 */
export const SPEAKS_FROM = 3;
/** What a loaner in its place shows to be at fault, but no part is: the tracing goes on to what mends it. */
const NOT_NAMED: readonly Fault['part'][] = ['software', 'settings', 'none', 'home'];

/**
 * What the log so far allows to be said. A part is named when it works without it, confirmed in one of three ways,
 * or nothing is to blame because a handling cured it. Without such an outcome it is traced on. `posterior`: with pairs, where
 * the verdict is to be written down. Chances are P(… | log), 0..1. The three ways and their thresholds: common practice, no
 * source; how often they are wrong on simulated machines is printed by the tracing benchmark.
 */
export function verdictAfter(
  model: FaultModel,
  tracing: TracingCase,
  posterior: Posterior = posteriorOf(model, tracing),
): EngineVerdict {
  const found = foundIn(model, tracing.log);
  if (found.length === 0) return { verdict: 'tracing' };
  const now = { model, tracing, found, posterior, suspects: suspectsOf(model, posterior) };
  return (
    mendedJustNow(now) ??
    quietSinceMended(now) ??
    proved(model, posterior, found) ??
    worked(now) ??
    mendedByNow(now) ??
    namedByEvidence(now) ??
    notReproduced(model, tracing, now.suspects) ?? { verdict: 'tracing' }
  );
}

/** What the log comes to so far: all that a verdict is made of. */
type SoFar = {
  readonly model: FaultModel;
  readonly tracing: TracingCase;
  readonly found: readonly Found[];
  readonly posterior: Posterior;
  readonly suspects: readonly Suspect[];
};

function namedByEvidence({ model, posterior, found }: SoFar): EngineVerdict | null {
  const shown = pointed(model, posterior, found);
  if (!shown) return null;
  const { part, fault, ofPart } = shown.blame;
  return {
    verdict: 'named',
    part,
    fault,
    p: ofPart,
    ...moreOf(model, posterior, shown.blame),
    evidence: evidenceOf([shown.by]),
    confirmBy: confirmingSteps(model, part),
  };
}

/** Could this step, working, name or mend anything: it takes something out, or does something that mends? */
const acts = ({ step }: Found): boolean => step.takesOut.length > 0 || Object.keys(step.mends).length > 0;

/** It works after a handling that mends what was found: that is no faulty part, whatever showed it before. */
function mendedJustNow(now: SoFar): EngineVerdict | null {
  const { found } = now;
  const last = found.at(-1);
  if (last?.outcome.meaning.means !== 'works' || last.step.kind === 'back' || last.step.takesOut.length > 0)
    return null;
  if (last.entry.leftOut.length > 0 || !acts(last)) return null;
  const verdict = cured(now, last);
  return verdict?.verdict === 'cured' && verdict.p >= NAMED_FROM ? verdict : null;
}

/** Watched for long enough since it was mended: no faulty part either, whatever showed it before. */
function quietSinceMended(now: SoFar): EngineVerdict | null {
  const verdict = now.found.at(-1)?.step.kind === 'load' ? mendedByNow(now) : null;
  return verdict?.verdict === 'cured' && verdict.watched ? verdict : null;
}

/** A later trial with the suspect in again that fails as before shows the same as putting it back. */
function showsBackIn(one: Found, { step, outcome, entry }: Found): boolean {
  const out = [...entry.leftOut, ...step.takesOut];
  const isIn =
    step.onRig === null && step.exposure !== null && !one.step.takesOut.some((circuit) => out.includes(circuit));
  return isIn && outcome.meaning.means === 'same';
}

/** It worked: with a part out or replaced that part is named, and confirmed when it fails again with the part back in. */
function worked(now: SoFar): EngineVerdict | null {
  const { model, tracing, found, posterior } = now;
  const at = found.findLastIndex(
    (one) => one.outcome.meaning.means === 'works' && one.step.kind !== 'back' && acts(one),
  );
  const one = found[at];
  if (!one) return null;
  if (one.step.takesOut.length === 0 || one.step.kind === 'reseat' || one.step.kind === 'setting')
    return cured(now, one);
  const back = found.slice(at + 1).findLast((later) => later.step.id === PUT_BACK || showsBackIn(one, later));
  const touched = (fault: Fault) => fault.circuits.some((circuit) => one.step.takesOut.includes(circuit));
  const blame = blameAmong(model, posterior, touched);
  if (!blame || NOT_NAMED.includes(blame.part) || blame.share < NAMED_FROM) return null;
  const { part, fault } = blame;
  // What is to be cleaned is no faulty part: it goes on to the cleaning.
  if (faultOf(model, fault).mendedBy === 'cleaning') return null;
  const blamed = (id: string) => faultOf(model, id).part === part && touched(faultOf(model, id));
  // With it back in all works: what was touched was mended by the handling, or stays hidden for now.
  if (back?.outcome.meaning.means === 'works') return null;
  const outBefore = ({ step, outcome }: Found) =>
    outcome.meaning.means === 'works' &&
    model.faults.some(({ id, circuits }) => blamed(id) && circuits.some((circuit) => step.takesOut.includes(circuit)));
  const failsAgain = back !== undefined;
  // Nearly sure beforehand, the odds can hardly rise: both ways is proof all the same.
  const sure = failsAgain && blame.ofPart >= CONFIRMED_FROM;
  const nearlySure = failsAgain && blame.ofPart >= MENDED_FROM;
  if (!nearlySure && !spoke(model, tracing, found.slice(0, at).find(outBefore) ?? one, one, blamed)) return null;
  const more = moreOf(model, posterior, blame);
  if (sure && isPart(part))
    return {
      verdict: 'confirmed',
      way: 'both-ways',
      part,
      fault,
      p: blame.ofPart,
      evidence: evidenceOf([one, back]),
      ...more,
    };
  // Ours in its place works and theirs fails again: nothing of the machine is at fault, and nobody pays for a part.
  if (nearlySure && part === 'outside')
    return { verdict: 'cured', by: 'outside', fault, p: blame.ofPart, evidence: evidenceOf([one, back]) };
  return {
    verdict: 'named',
    part,
    fault,
    p: blame.share,
    ...more,
    evidence: evidenceOf(back ? [one, back] : [one]),
    confirmBy: confirmingSteps(model, part),
  };
}

/** A trial or a watch of the whole machine, all of the owner's in, that showed nothing. */
function wholeAndQuiet({ step, outcome, entry }: Found): boolean {
  const quiet = step.kind === 'load' && step.onRig === null && outcome === step.outcomes[step.normal];
  return (quiet || outcome.meaning.means === 'works') && step.takesOut.length === 0 && entry.leftOut.length === 0;
}

/**
 * What comes and goes is mended only when it kept away for long enough since, had it still been there: the hours watched
 * and the chance that it kept away. Undefined where it fails steadily and a good trial tells at once; null: not long enough.
 */
function watchedLong({
  model,
  tracing,
  posterior,
  suspects,
}: SoFar): { readonly hours: number; readonly hiddenChance: number } | undefined | null {
  if (!mostlyIntermittent(suspects)) return undefined;
  const watch = watchSince(model, tracing, posterior, suspects);
  if (!watch) return null;
  const hidden = hiddenChance(model, watch, suspects);
  return hidden <= HIDDEN_AT_MOST ? { hours: watch.hours, hiddenChance: hidden } : null;
}

/**
 * It works here with everything of the owner's in: what the handlings before could mend has been mended, whichever of
 * them did, or what was wrong stands outside the machine, where ours stands now.
 */
function mendedByNow(now: SoFar): EngineVerdict | null {
  const { model, posterior, found, suspects } = now;
  const last = found.at(-1);
  if (!last || !wholeAndQuiet(last)) return null;
  const goneBy = (one: Suspect) => one.mended + (isOutside(faultOf(model, one.fault).part) ? one.p : 0);
  const gone = goneOf(model, posterior);
  const top = suspects.toSorted((a, b) => goneBy(b) - goneBy(a))[0];
  if (!top || gone < MENDED_FROM) return null;
  const byMending = top.mended >= top.p;
  const watched = byMending ? watchedLong(now) : undefined;
  if (watched === null || (last.outcome.meaning.means !== 'works' && !watched)) return null;
  const { mendedBy } = faultOf(model, top.fault);
  const did = found.filter((one) => (one.step.mends[top.fault] ?? one.step.mendsAfter[top.fault] ?? 0) > 0);
  const by = mendedBy === 'part' ? 'reseating' : mendedBy;
  return {
    verdict: 'cured',
    by: byMending ? by : 'outside',
    fault: goneBy(top) >= BELIEVED_FROM ? top.fault : null,
    p: gone,
    evidence: evidenceOf([...did.filter((one) => one !== last), last]),
    ...(watched ? { watched } : {}),
  };
}

/** Did these steps, the first to the last, speak for these faults: are their odds well above what they were before? */
function spoke(
  model: FaultModel,
  tracing: TracingCase,
  first: Found,
  last: Found,
  blamed: (fault: string) => boolean,
): boolean {
  const [from = 0, to = 0] = [first, last].map((one) => tracing.log.indexOf(one.entry));
  const chanceAt = (log: readonly LoggedStep[]) =>
    shareOf(model, posteriorOf(model, { ...tracing, log }, false), ({ id }) => blamed(id));
  return odds(chanceAt(tracing.log.slice(0, to + 1))) >= SPEAKS_FROM * odds(chanceAt(tracing.log.slice(0, from)));
}

function cured(now: SoFar, one: Found): EngineVerdict | null {
  const { model, tracing, posterior, found, suspects } = now;
  const later = found.slice(found.indexOf(one) + 1);
  if (later.some((again) => ['same', 'worse', 'fails-again'].includes(again.outcome.meaning.means))) return null;
  const mends = (fault: string) => (one.step.mends[fault] ?? 0) > 0;
  if (shareOf(model, posterior, ({ id }) => mends(id)) < NAMED_FROM || !spoke(model, tracing, one, one, mends))
    return null;
  const watched = watchedLong(now);
  if (watched === null) return null;
  const separated = later.findLast((after) => after.outcome.meaning.means === 'separates');
  const believed = one.step.kind === 'sweep' && !separated ? toldApart(model, suspects, mends) : null;
  if (one.step.kind === 'sweep' && !separated && !believed)
    return { verdict: 'cured', by: 'sweep', fault: null, p: 1, evidence: evidenceOf([one]), ...findOut(model) };
  const only = separated?.outcome.meaning.means === 'separates' ? separated.outcome.meaning.by : believed;
  const among = suspects.filter(
    ({ fault }) => mends(fault) && (only === null || faultOf(model, fault).mendedBy === only),
  );
  const mended = among.toSorted((a, b) => b.mended - a.mended)[0];
  const by = only ?? (mended ? faultOf(model, mended.fault).mendedBy : 'reseating');
  return {
    verdict: 'cured',
    by: by === 'part' ? 'reseating' : by,
    fault: mended && mended.mended >= BELIEVED_FROM ? mended.fault : null,
    p: Math.min(
      1,
      among.reduce((sum, one) => sum + one.mended, 0),
    ),
    evidence: evidenceOf(separated ? [one, separated] : [one]),
    ...(watched ? { watched } : {}),
  };
}

/** The step that tells a sweep's handlings apart, where the model has one. */
function findOut(model: FaultModel): { readonly findOut?: StepId } {
  const step = model.steps.find((one) => one.outcomes.some(({ meaning }) => meaning.means === 'separates'));
  return step ? { findOut: step.id } : {};
}

/** The steps that confirm a part which was only named whatever else is known: back in, or on the second rig. */
function confirmingSteps(model: FaultModel, part: Fault['part']): readonly StepId[] {
  return model.steps
    .filter(
      (step) =>
        step.id === PUT_BACK || (step.confirming && (step.handling.intoRig === part || step.handling.borrows === part)),
    )
    .map((step) => step.id);
}
