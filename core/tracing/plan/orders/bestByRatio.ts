import { at } from '../../../figures/rows.ts';
import type { CompiledProblem } from '../problem/compiledProblem.ts';
import type { PlanState } from '../states/planState.ts';
import type { RatioSums } from './ratioSums.ts';

/**
 * The steps with the best chance of a cure for their minutes, p/c: the order of least expected time where each step looks
 * for something of its own (Smith, Naval Research Logistics Quarterly 3, 1956; Kadane and Simon 1977). The best first,
 * at most `most`, the earlier step first at ties; those of `taken` and those done are left out. `sums`: of the state's
 * belief. Harm counts as minutes; opening and closing by what they cost from here.
 */
export function bestByRatio(
  compiled: CompiledProblem,
  { mass, done, arrangement }: PlanState,
  { cure, harm }: RatioSums,
  most: number,
  taken: readonly number[] = [],
): readonly number[] {
  const ratios = cure.map((chance, s) => {
    if (chance <= 0 || done[s] === 1 || taken.includes(s)) return 0;
    const minutes = at(compiled.minutes, s) + compiled.arrangements.move(arrangement, s).price;
    return chance / (mass * minutes + at(harm, s));
  });
  const best: number[] = [];
  while (best.length < most) {
    let next = -1;
    let ratio = 0;
    ratios.forEach((own, s) => {
      if (own <= ratio) return;
      next = s;
      ratio = own;
    });
    if (next < 0) break;
    ratios[next] = 0;
    best.push(next);
  }
  return best;
}
