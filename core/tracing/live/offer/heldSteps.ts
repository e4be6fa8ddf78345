import { askFor, lackingWords } from '../gates/ownersWords.ts';
import { stepOf } from '../model/special.ts';
import type { HeldStep } from '../problem/toProblem.ts';
import type { FaultModel, NotOffered, Step, TracingCase } from '../types.ts';

/** Steps that only a gate or a word of the owner's holds back, where all that opens it can be done now: looked at, or asked. */
export function heldSteps(
  model: FaultModel,
  tracing: TracingCase,
  notOffered: readonly NotOffered[],
  steps: readonly Step[],
): readonly HeldStep[] {
  return notOffered.flatMap(({ step, why }) => {
    const held = stepOf(model, step);
    const firstDo = openersOf(model, tracing, held, why, steps);
    return firstDo ? [{ step: held, firstDo }] : [];
  });
}

/** What opens the way to a step; null where something of it cannot be done now, or nothing would. */
function openersOf(
  model: FaultModel,
  tracing: TracingCase,
  held: Step,
  why: NotOffered['why'],
  steps: readonly Step[],
): readonly Step[] | null {
  const ways =
    why.is === 'word'
      ? [lackingWords(model, tracing, held).map((word) => askFor(steps, word))]
      : why.is === 'machine' && why.need === 'key-in-hand'
        ? [[askFor(steps, 'key')]]
        : why.is === 'gate'
          ? why.ways.map((way) => way.map((id) => steps.find((one) => one.id === id)))
          : [];
  for (const way of ways) {
    const known = way.filter((step) => step !== undefined);
    if (known.length > 0 && known.length === way.length) return [...new Set(known)];
  }
  return null;
}
