import type { Kept } from '../memory.ts';
import { faultNumber } from '../model/special.ts';
import type { FaultModel, Step } from '../types.ts';

/** What is left of a handling's chance to mend once it was done and the machine still failed: common practice, no source. */
const LEFT = 0.1;

export type Mends = { readonly mends: Float64Array; readonly mendsAfter: Float64Array };

/** By step and what of it is spent. */
const MENDS: Kept<Map<string, Mends>> = { begin: () => new Map() };

/**
 * What a step may mend, by fault, some of its handlings having been done before (`spentBits`, see `handlingsOf`): what did not
 * mend then will hardly mend now, however many steps do it once more on the way.
 */
export function mendsOf(model: FaultModel, step: Step, spentBits: number): Mends {
  const made = model.memory.of(model, MENDS);
  const key = `${step.id} ${spentBits}`;
  const before = made.get(key);
  if (before) return before;
  const doing = [...step.does, ...step.alsoDoes];
  const mends = {
    mends: lessened(model, step.mends, doing, (at) => (spentBits & (1 << at)) !== 0),
    mendsAfter: lessened(
      model,
      step.mendsAfter,
      step.putBackDoes,
      (at) => (spentBits & (1 << (doing.length + at))) !== 0,
    ),
  };
  made.set(key, mends);
  return mends;
}

/** Each fault's own chance, times the share that is left of it where some of the handlings are spent. */
function lessened(
  model: FaultModel,
  whole: { readonly [fault: string]: number },
  handlings: readonly string[],
  isSpent: (at: number) => boolean,
): Float64Array {
  const row = new Float64Array(model.faults.length);
  for (const [fault, chance] of Object.entries(whole)) {
    let [fresh, now] = [1, 1];
    for (const [at, id] of handlings.entries()) {
      if (handlings.indexOf(id) !== at) continue;
      const one = model.handlings[id]?.[fault] ?? 0;
      fresh *= 1 - one;
      now *= 1 - one * (isSpent(at) ? LEFT : 1);
    }
    row[faultNumber(model, fault)] = fresh < 1 ? (chance * (1 - now)) / (1 - fresh) : chance;
  }
  return row;
}
