import { odds } from '../../../figures/odds.ts';
import { at, smallAt } from '../../../figures/rows.ts';
import { PUT_BACK } from '../model/special.ts';
import type { LiveProblem } from '../problem/toProblem.ts';
import type { Fault, FaultModel, Step } from '../types.ts';
import { NAMED_FROM } from '../verdict/proof.ts';
import { SPEAKS_FROM } from '../verdict/verdictAfter.ts';

/** An outcome rarer than this is not counted on. Common practice, no source. */
export const COUNTED_ON = 0.02;

/**
 * The steps that can settle a part that was only named: some outcome that is to be counted on would speak for it, or leave
 * it less likely than not; and the suspect back in, without which nothing is shown both ways. All others would only add
 * minutes.
 */
export function settlingSteps(model: FaultModel, live: LiveProblem, part: Fault['part']): readonly Step[] {
  const { prior } = live.problem;
  const ofPart = Uint8Array.from(live.hypotheses, ({ hypothesis: { first, second } }) =>
    model.faults[first]?.part === part || (second >= 0 && model.faults[second]?.part === part) ? 1 : 0,
  );
  const now = prior.reduce((sum, p, w) => sum + p * smallAt(ofPart, w), 0);
  return live.steps.filter(
    (step, s) =>
      step.id === PUT_BACK ||
      (live.own[s]?.chance ?? []).some((row) => {
        const p = row.reduce((sum, one, w) => sum + one * at(prior, w), 0);
        if (p < COUNTED_ON) return false;
        const after = row.reduce((sum, one, w) => sum + one * at(prior, w) * smallAt(ofPart, w), 0) / p;
        return after <= NAMED_FROM || odds(after) >= SPEAKS_FROM * odds(now);
      }),
  );
}
