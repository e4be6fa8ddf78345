import { useState } from 'react';
import refusals from '../../../assets/words/en/refusals.json';
import type { SlotPlan } from '../../../core/custody/slot.ts';
import { type SlotEdits, slotPlanByHand } from '../../../core/fit/slotPlan.ts';
import { type RefusalWords, wordsFor } from '../../../core/text/wordsFor.ts';

export type SlotsByHand = {
  readonly plan: SlotPlan;
  /** Puts the slots right; true when it was done, else `problem` says why not. */
  readonly edit: (edits: SlotEdits) => boolean;
  readonly problem: RefusalWords | null;
  /** Back to what was learnt without a look. */
  readonly asLearnt: () => void;
};

/** The slots as they were learnt, until somebody looks and puts them right. */
export function useSlotsByHand(learnt: SlotPlan): SlotsByHand {
  const [byHand, setByHand] = useState<SlotPlan | null>(null);
  const [problem, setProblem] = useState<RefusalWords | null>(null);
  const plan = byHand ?? learnt;
  return {
    plan,
    edit: (edits) => {
      const edited = slotPlanByHand(plan, edits);
      if ('refused' in edited) {
        setProblem(wordsFor(edited, refusals));
        return false;
      }
      setByHand(edited);
      setProblem(null);
      return true;
    },
    problem,
    asLearnt: () => {
      setByHand(null);
      setProblem(null);
    },
  };
}
