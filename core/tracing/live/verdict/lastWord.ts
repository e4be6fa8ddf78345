import { newPartOf } from '../belief/likelihood.ts';
import type { Posterior } from '../belief/posterior.ts';
import { askFor } from '../gates/ownersWords.ts';
import { hasShown, isSteady } from '../gates/shown.ts';
import { failsIn, standsNow } from '../gates/standsNow.ts';
import { knownStep } from '../model/special.ts';
import type { OutcomesByStep, UsedIds } from '../model/usedIds.ts';
import { groupsSeen } from '../readGroups.ts';
import type { EngineVerdict, Fault, FaultId, FaultModel, NotOffered, Step, Suspect, TracingCase } from '../types.ts';
import { BELIEVED_FROM } from '../wayBelieved.ts';
import { blameAmong, faultOf, isOutside, isPart, shareOf } from './blame.ts';
import { moreOf } from './elseWrong.ts';
import { STILL_LEFT } from './neverFailedHere.ts';
import { CONFIRMED_FROM, evidenceOf, type Found, foundIn, NAMED_FROM } from './proof.ts';

/** With nothing left to do, a part is named from this chance on: it is said as likely, never as proved. Common practice, no source. */
const SAID_FROM = 0.9;

/** Of these nothing can be named: nothing is wrong, or we made it ourselves. */
const NOTHING: readonly Fault['part'][] = ['none', 'ours'];

/** It is seen by eye or not at all: unseen it is no name for anything. */
const SEEN_ONLY: readonly FaultId[] = ['battery-swollen'];
const WORKS_AS_BEFORE: OutcomesByStep = { 'as-before': ['works'] };
/** What it goes by. */
export const LAST_WORD: UsedIds = { faults: SEEN_ONLY, shown: WORKS_AS_BEFORE };

type SoFar = {
  readonly model: FaultModel;
  readonly tracing: TracingCase;
  readonly posterior: Posterior;
  readonly suspects: readonly Suspect[];
};

/**
 * What can be said where no step is left: that it lies outside the machine, which part is nearly sure, or that nothing
 * failed here. Null where none of this is so, or nothing was done.
 */
export function lastWord(now: SoFar): EngineVerdict | null {
  const found = foundIn(now.model, now.tracing.log);
  if (found.length === 0) return null;
  return outsideIt(now, found) ?? leading(now, found) ?? fineHere(now, found);
}

/** All that is likely stands outside the machine. */
function outsideIt({ model, tracing, posterior }: SoFar, found: readonly Found[]): EngineVerdict | null {
  const outside = shareOf(model, posterior, ({ part }) => isOutside(part));
  if (outside < (onlyWithTheirs(model, tracing) ? NAMED_FROM : SAID_FROM)) return null;
  const blame = blameAmong(model, posterior, ({ part }) => isOutside(part));
  const fault =
    blame && shareOf(model, posterior, ({ id }) => id === blame.fault) >= BELIEVED_FROM ? blame.fault : null;
  return { verdict: 'cured', by: 'outside', fault, p: outside, evidence: evidenceOf(found) };
}

/** It worked here by itself, and failed as soon as the owner's own things hung on it. */
function onlyWithTheirs(model: FaultModel, tracing: TracingCase): boolean {
  const failed = tracing.log.filter((entry) => failsIn(model, entry));
  return (
    groupsSeen(model, tracing).every((group) => group === 'not-shown') &&
    failed.length > 0 &&
    failed.every(({ step }) => knownStep(model, step)?.bringsIn.includes('home'))
  );
}

/** Chance of the faults of a part that nothing has mended yet. */
const stillThere = (model: FaultModel, suspects: readonly Suspect[], part: Fault['part']): number =>
  suspects.reduce((sum, { fault, p }) => sum + (faultOf(model, fault).part === part ? p : 0), 0);

/**
 * Is it known what is wrong, so surely that it would be confirmed were it a part, and can nothing that is left mend it? A
 * locked disk whose key nobody has is that: ours in its place tells nothing new.
 */
export function isFoundOut({ model, tracing, posterior, suspects }: SoFar, steps: readonly Step[]): boolean {
  if (foundIn(model, tracing.log).length === 0) return false;
  const blame = blameAmong(model, posterior, ({ part }) => !isOutside(part) && !NOTHING.includes(part));
  if (!blame || isPart(blame.part) || stillThere(model, suspects, blame.part) < CONFIRMED_FROM) return false;
  return !steps.some((step) => (step.mends[blame.fault] ?? 0) > 0);
}

/** The new part goes back whatever is wrong with it, once the machine was seen to run as it was before it. Common practice, no source. */
const GOES_BACK_FROM = 0.7;

/** Is the part that is named the new one, without which it was seen to work? Its remedy is clear then. */
export const isNewPart = (
  tracing: TracingCase,
  { part, p }: { readonly part: Fault['part']; readonly p: number },
): boolean =>
  p >= GOES_BACK_FROM && isSteady(tracing) && newPartOf(tracing) === part && hasShown(tracing, WORKS_AS_BEFORE);

/** One part that nearly all of the belief is in, though nothing here can prove it. */
function leading({ model, posterior, suspects }: SoFar, found: readonly Found[]): EngineVerdict | null {
  const blame = blameAmong(model, posterior, ({ part }) => !isOutside(part) && !NOTHING.includes(part));
  if (!blame || stillThere(model, suspects, blame.part) < SAID_FROM || SEEN_ONLY.includes(blame.fault)) return null;
  const { part, fault, ofPart } = blame;
  const more = moreOf(model, posterior, blame);
  return { verdict: 'named', part, fault, p: ofPart, ...more, evidence: evidenceOf(found), confirmBy: [] };
}

/** It was told to fail, and did not while it was here: what is left of the belief in a fault of the machine stayed hidden. */
function fineHere({ model, tracing, posterior, suspects }: SoFar, found: readonly Found[]): EngineVerdict | null {
  const seen = groupsSeen(model, tracing);
  if (seen.length === 0 || seen.some((group) => group !== 'not-shown') || standsNow(model, tracing) !== 'works')
    return null;
  if (tracing.log.some((entry) => failsIn(model, entry))) return null;
  const notHere = ({ part }: Fault) => isOutside(part) || NOTHING.includes(part);
  return {
    verdict: 'not-reproduced',
    hiddenChance: shareOf(model, posterior, (fault) => !notHere(fault)),
    left: suspects.filter((one) => one.p >= STILL_LEFT).map((one) => one.fault),
    evidence: evidenceOf(found),
  };
}

const gives = (asking: Step | undefined, answer: string): boolean =>
  asking?.outcomes.some((outcome) => outcome.id === answer && outcome.gives.length > 0) ?? false;

/** Was the owner asked for a word that steps still wait for, and did not give it? A yes that is not on the sheet yet is no refusal. */
export const wasDeclined = (model: FaultModel, { log }: TracingCase, notOffered: readonly NotOffered[]): boolean =>
  notOffered.some(({ why }) => {
    const word = why.is === 'word' ? why.need : why.is === 'machine' && why.need === 'key-in-hand' ? 'key' : null;
    const asking = word === null ? undefined : askFor(model.steps, word);
    const answer = log.findLast((entry) => !entry.struck && entry.step === asking?.id)?.outcome;
    return answer !== undefined && !gives(asking, answer);
  });
