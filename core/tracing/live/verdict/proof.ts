import type { Posterior } from '../belief/posterior.ts';
import { cameOf } from '../cameOf.ts';
import { knownStep } from '../model/special.ts';
import type { EngineVerdict, EvidenceEntry, Fault, FaultModel, LoggedStep, Outcome, Step } from '../types.ts';
import { type Blame, blameAmong, endsWhenFound, faultOf, isOutside, isPart } from './blame.ts';
import { moreOf } from './elseWrong.ts';

/**
 * A part is called confirmed only while all that was logged leaves a fault of that part at least this likely,
 * whichever way it was shown. Below it the part is named, and what could still clear it is offered. One wrong in forty at
 * most, by the belief's own account, before an owner pays for a part: common practice, no source; how often it is wrong in
 * simulated machines is printed by the tracing benchmark.
 */
export const CONFIRMED_FROM = 0.975;
/** A reading alone, nothing swapped and nothing in another machine, must leave less doubt: common practice, no source. */
export const CONFIRMED_BY_READING = 0.98;
/** What was shown names a part while that is likelier than not. */
export const NAMED_FROM = 0.5;

/** A logged step that the model knows, with its outcome; a look at several places once for each finding. */
export type Found = { readonly entry: LoggedStep; readonly step: Step; readonly outcome: Outcome };

/** What of a log the model knows, what was struck out apart. */
export const foundIn = (model: FaultModel, log: readonly LoggedStep[]): readonly Found[] =>
  log.flatMap((entry) => {
    const step = entry.struck ? undefined : knownStep(model, entry.step);
    return cameOf(entry).flatMap((id) => {
      const outcome = step?.outcomes.find((one) => one.id === id);
      return step && outcome ? [{ entry, step, outcome }] : [];
    });
  });

/** What was found, as a verdict names it: entry, step and outcome, in the order of the log. */
export const evidenceOf = (found: readonly Found[]): readonly EvidenceEntry[] =>
  found.map(({ entry, step, outcome }) => ({ entry: entry.entry, step: step.id, outcome: outcome.id }));

type Shown = { readonly way: 'own-evidence' | 'second-rig'; readonly blame: Blame; readonly by: Found };

const enough = ({ way, blame }: Shown): boolean =>
  blame.ofPart >= (way === 'own-evidence' ? CONFIRMED_BY_READING : CONFIRMED_FROM);

/** What is put right by cleaning, reseating or setting is no faulty part, however surely it was found: that leads to the mend. */
const isFaultyPart = (model: FaultModel, { part, fault }: Blame): boolean =>
  isPart(part) && endsWhenFound(faultOf(model, fault));

/** The finding that is proof by itself, the latest first, and what it blames. */
function ownEvidence(model: FaultModel, posterior: Posterior, found: readonly Found[]): Shown | null {
  let best: Shown | null = null;
  for (const by of found.toReversed()) {
    const { meaning } = by.outcome;
    if (meaning.means !== 'evidence') continue;
    const blame = blameAmong(model, posterior, (fault) => meaning.of.includes(fault.id));
    if (blame && blame.ofPart > (best?.blame.ofPart ?? 0)) best = { way: 'own-evidence', blame, by };
  }
  return best;
}

/** Every other part in the rig was known-good: what fails there is what was put in. */
function onTheRig(model: FaultModel, posterior: Posterior, found: readonly Found[]): Shown | null {
  const by = found.findLast(
    ({ step, outcome: { meaning } }) =>
      step.onRig !== null && (meaning.means === 'fails-on-rig' || meaning.means === 'works-on-rig'),
  );
  if (by?.outcome.meaning.means !== 'fails-on-rig') return null;
  const inside = (fault: Fault) => fault.circuits.some((circuit) => by.step.onRig?.includes(circuit));
  const blame = blameAmong(model, posterior, inside);
  return blame && { way: 'second-rig', blame, by };
}

/**
 * What is proved by its own evidence or on the second rig: a part confirmed, or what stands outside the machine found.
 * Null when neither was seen, or when other explanations are still too likely.
 */
export function proved(model: FaultModel, posterior: Posterior, found: readonly Found[]): EngineVerdict | null {
  for (const shown of [ownEvidence(model, posterior, found), onTheRig(model, posterior, found)]) {
    if (!shown || !enough(shown)) continue;
    const { part, fault, ofPart } = shown.blame;
    const evidence = evidenceOf([shown.by]);
    if (isOutside(part)) return { verdict: 'cured', by: 'outside', fault, p: ofPart, evidence };
    if (isFaultyPart(model, shown.blame))
      return {
        verdict: 'confirmed',
        way: shown.way,
        part,
        fault,
        p: ofPart,
        evidence,
        ...moreOf(model, posterior, shown.blame),
      };
  }
  return null;
}

/** The same evidence where it is not proof enough yet: it names the part. */
export function pointed(
  model: FaultModel,
  posterior: Posterior,
  found: readonly Found[],
): { readonly blame: Blame; readonly by: Found } | null {
  const shown = [ownEvidence(model, posterior, found), onTheRig(model, posterior, found)]
    .filter((one) => one !== null)
    .filter((one) => isFaultyPart(model, one.blame) && one.blame.ofPart >= NAMED_FROM && !enough(one))
    .toSorted((a, b) => b.blame.ofPart - a.blame.ofPart)[0];
  return shown ?? null;
}
