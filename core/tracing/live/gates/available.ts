import type { ThingKind } from '../../../custody/part.ts';
import { assemblyOf, opensOf } from '../assembly.ts';
import { reaches } from '../reach.ts';
import { groupsNow } from '../readGroups.ts';
import type { Belief, FaultModel, Loaner, NotOffered, Step, TracingCase } from '../types.ts';
import { gatesNow, timesDone } from './gates.ts';
import { lifeNow, lifeWithout } from './life.ts';
import { unmetNeed } from './machineNeeds.ts';
import { lackingWords } from './ownersWords.ts';

/** Tools that every bench has and nobody enters on the wall. */
const ALWAYS_AT_HAND: readonly ThingKind[] = ['cord', 'keyboard', 'lamp', 'picture-cable', 'screen', 'lead', 'speaker'];

/** The loaner that would be taken: one that fits and is free, trial-grade first, then the least dear; or why there is none. */
export function loanerFor(
  tracing: TracingCase,
  kind: ThingKind,
): { readonly loaner: Loaner } | { readonly because: 'none' | 'does-not-fit' | 'taken' } {
  const ofKind = tracing.stock.filter(
    (loaner) => loaner.kind === kind && loaner.standing !== 'exposed' && loaner.standing !== 'unproved',
  );
  if (ofKind.length === 0) return { because: 'none' };
  const fitting = ofKind.filter((loaner) => loaner.fits !== 'no');
  if (fitting.length === 0) return { because: 'does-not-fit' };
  const free = fitting.filter((loaner) => !loaner.taken);
  const rank = (loaner: Loaner) =>
    [
      loaner.fits === 'yes' ? 0 : 1,
      loaner.standing === 'trial-grade' ? 0 : 1,
      loaner.valueMinor ?? Number.MAX_VALUE,
    ] as const;
  const best = free.toSorted(
    (a, b) => rank(a)[0] - rank(b)[0] || rank(a)[1] - rank(b)[1] || rank(a)[2] - rank(b)[2],
  )[0];
  return best ? { loaner: best } : { because: 'taken' };
}

/** Everything that keeps a step from being offered now; null when it can be done. */
export const whyNotOffered = (
  model: FaultModel,
  tracing: TracingCase,
  step: Step,
  suspects: Belief['suspects'],
): NotOffered['why'] | null => whyNot(model, tracing, suspects)(step);

/** As `whyNotOffered`, for many steps: what is the same for all of them is asked once. */
export function whyNot(
  model: FaultModel,
  tracing: TracingCase,
  suspects: Belief['suspects'],
): (step: Step) => NotOffered['why'] | null {
  const groups = groupsNow(model, tracing);
  const life = lifeNow(model, tracing);
  const assembly = assemblyOf(model, tracing.switches);
  const gates = gatesNow(model, tracing, suspects);
  return (step) => {
    if (timesDone(model, tracing, step) >= step.repeatable) return { is: 'done' };
    if (step.groups.length > 0 && groups.length > 0 && !step.groups.some((group) => groups.includes(group)))
      return { is: 'other-group' };
    const need = unmetNeed(model, step, tracing);
    if (need) return { is: 'machine', need };
    const gets = step.kind === 'setting' ? lifeWithout(tracing, life) : life;
    if (!reaches(gets, step.life)) return { is: 'life', needs: step.life, has: life };
    if (opensOf(assembly, step).some((state) => assembly.refuses.has(state)))
      return { is: 'machine', need: 'socketed-processor' };
    const { orders } = step.handling;
    if (orders && 'loaner' in loanerFor(tracing, orders)) return { is: 'own-first', kind: orders };
    const word = lackingWords(model, tracing, step)[0];
    if (word) return { is: 'word', need: word };
    let standing: Loaner['standing'] | null = null;
    for (const kind of [step.handling.borrows, ...step.handling.alsoBorrows]) {
      if (kind === null || ALWAYS_AT_HAND.includes(kind) || kind === 'rig') continue;
      const found = loanerFor(tracing, kind);
      if ('because' in found) return { is: 'no-loaner', kind, because: found.because };
      if (kind === step.handling.borrows) standing = found.loaner.standing;
    }
    const gate = gates.ofStep(step, standing)[0];
    return gate ? { is: 'gate', gate: gate.gate.id, firstDo: gate.firstDo, ways: gate.ways } : null;
  };
}
