import { assemblyOf, closingMinutes, movesBefore } from '../../../../core/tracing/live/assembly.ts';
import { inPlace } from '../../../../core/tracing/live/belief/inPlace.ts';
import { outlook } from '../../../../core/tracing/live/belief/outlook.ts';
import { priorOf } from '../../../../core/tracing/live/belief/prior.ts';
import { lookMask } from '../../../../core/tracing/live/configuration.ts';
import { whyNotOffered } from '../../../../core/tracing/live/gates/available.ts';
import { openStates } from '../../../../core/tracing/live/offer/openStates.ts';
import { openTracing } from '../../../../core/tracing/live/openTracing.ts';
import type { FaultModel, Outcome, Step, TracingCase } from '../../../../core/tracing/live/types.ts';
import { HANDED_OVER } from './runMachine.ts';

/**
 * The perfect-information bound: the least hands-on minutes of one who knows the fault, to cure or prove it by the
 * cheapest step that can, opening and closing included, or to hand it over. A step that succeeds with chance p is done
 * 1/p times on average; gates do not hold back one who knows. Nothing wrong needs nothing done.
 *
 * No way of working that ends with the true fault can need less on average: each try costs at least the least ratio of
 * minutes to chance (Kadane & Simon 1977), and openings are charged once.
 */
export function minutesKnowing(world: FaultModel, start: TracingCase, fault: number, comes: 0 | 1): number {
  const open = openStates(world, start);
  const assembly = assemblyOf(world, start.switches);
  const home = closingMinutes(assembly, open);
  const id = world.faults[fault]?.id ?? '';
  if (id === 'nothing-wrong') return home;
  const back = world.steps.find((step) => step.id === 'put-back')?.handsOn ?? 0;
  let least = home + HANDED_OVER;
  const ungated = openTracing({ ...world, gates: [] });
  for (const step of world.steps) {
    if (!canBeDone(ungated, start, step)) continue;
    const { moves, open: after } = movesBefore(assembly, open, step);
    const around = moves.reduce((sum, move) => sum + move.minutes, closingMinutes(assembly, after));
    for (const { chance, more } of waysOf(world, start, step, fault, comes, back))
      if (chance > 0) least = Math.min(least, around + step.handsOn / chance + more);
  }
  return least;
}

/** Is there what the step needs, gates apart? What follows from a life or a cure that the step before may bring is let through. */
function canBeDone(ungated: FaultModel, start: TracingCase, step: Step): boolean {
  const why = whyNotOffered(ungated, start, step, []);
  return why === null || why.is === 'life' || why.is === 'machine';
}

/** How a step can settle this fault: the chance of it at one try, and minutes for proving it afterwards. */
function waysOf(world: FaultModel, start: TracingCase, step: Step, fault: number, comes: 0 | 1, back: number) {
  const { id = '', circuits = [] } = world.faults[fault] ?? {};
  const s = world.stepIndex.get(step.id) as number;
  const conditions = inPlace(world, priorOf(world, start), s, lookMask(world, start.log, step));
  const hypothesis = { first: fault, firstMode: comes, second: -1, secondMode: 0, prior: 1 } as const;
  const chanceOf = (settles: (outcome: Outcome) => boolean): number =>
    step.outcomes.reduce((sum, outcome, o) => {
      const condition = conditions[o];
      return condition && settles(outcome) ? sum + outlook(hypothesis, 1, condition) : sum;
    }, 0);
  const taken = circuits.some((circuit) => step.takesOut.includes(circuit));
  const onRig = step.onRig !== null && circuits.some((circuit) => step.onRig?.includes(circuit));
  const mend = step.mends[id] ?? 0;
  return [
    { chance: chanceOf(({ meaning }) => meaning.means === 'evidence' && meaning.of.includes(id)), more: 0 },
    { chance: onRig ? chanceOf(({ meaning }) => meaning.means === 'fails-on-rig') : 0, more: 0 },
    { chance: mend + (1 - mend) * (step.mendsAfter[id] ?? 0), more: 0 },
    { chance: taken ? chanceOf(({ meaning }) => meaning.means === 'works') : 0, more: back },
  ];
}
