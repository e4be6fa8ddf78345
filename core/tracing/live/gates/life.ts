import { LIVES } from '../model/needs.ts';
import { knownStep } from '../model/special.ts';
import type { OutcomesByStep } from '../model/usedIds.ts';
import { LIFE_OF, reaches } from '../reach.ts';
import { groupsSeen, groupsTold } from '../readGroups.ts';
import type { Circuit, FaultModel, Group, Life, SymptomId, TracingCase } from '../types.ts';
import { hasShown } from './shown.ts';

/** Without these of the owner's it is not the owner's system that runs. */
const CARRIES_SYSTEM: readonly Circuit[] = ['drive', 'software', 'board', 'processor'];

/**
 * How far the machine gets now: what the log showed last, else the least that its symptoms allow. Where it worked only
 * with our drive, board or processor in, the owner's go back before the next step, and it gets no further than before.
 */
export function lifeNow(model: FaultModel, tracing: TracingCase): Life {
  let failedSince = false;
  for (const entry of tracing.log.toReversed()) {
    const step = entry.struck ? undefined : knownStep(model, entry.step);
    const outcome = step?.outcomes.find((one) => one.id === entry.outcome);
    if (!step || !outcome || step.onRig) continue;
    if (outcome.life) return outcome.life;
    const { means } = outcome.meaning;
    const whole = !step.takesOut.some((circuit) => CARRIES_SYSTEM.includes(circuit));
    if (means === 'works' && step.exposure && whole && !failedSince) return 'system';
    failedSince ||= ['works', 'same', 'worse', 'fails-again'].includes(means);
  }
  const seen = groupsSeen(model, tracing);
  const terms = tracing.seen.length > 0 ? tracing.seen : tracing.told.symptoms;
  return lifeBy(model, terms, seen.length > 0 ? seen : groupsTold(model, tracing.told.symptoms));
}

/** The least that these terms and their groups allow. */
function lifeBy(model: FaultModel, terms: readonly SymptomId[], groups: readonly Group[]): Life {
  const least =
    groups.map((group) => LIFE_OF[group]).sort((a, b) => LIVES.indexOf(a) - LIVES.indexOf(b))[0] ?? 'system';
  // "Dark after sleep" is seen of a machine that started well: the very term knows more than its group.
  return model.symptoms.reduce<Life>(
    (life, term) => (term.life && terms.includes(term.id) && reaches(term.life, life) ? term.life : life),
    least,
  );
}

/**
 * Did it come as a machine that runs, to a picture at least? Not where a word was told that asks for a look before power,
 * nor where something happened to it since that does.
 */
export function cameRunning(model: FaultModel, { told }: Pick<TracingCase, 'told'>): boolean {
  const stops = model.symptoms.some(({ id, stop }) => stop && told.symptoms.includes(id));
  const groups = groupsTold(model, told.symptoms);
  const life = lifeBy(model, told.symptoms, groups);
  return groups.length > 0 && !stops && !isShaken(model, { told }) && reaches(life, 'picture');
}

/** Did something happen to it that asks for a look inside before power: moved, dropped, wet, a bang, never run? */
export const isShaken = ({ evidence }: FaultModel, { told }: Pick<TracingCase, 'told'>): boolean =>
  evidence.some(({ id, lookFirst }) => lookFirst && told.changed.includes(id));

/** Without the card, or as it was before it, there was a picture: settings are made so, and the card goes in again after. */
export const PICTURE_WITHOUT: OutcomesByStep = { 'card-none': ['works'], 'as-before': ['works'] };

/** How far the machine gets for making a setting: with what hinders it out for that. */
export const lifeWithout = (tracing: Pick<TracingCase, 'log'>, life: Life): Life =>
  hasShown(tracing, PICTURE_WITHOUT) && !reaches(life, 'picture') ? 'picture' : life;
