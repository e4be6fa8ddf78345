import { newPartOf } from '../belief/likelihood.ts';
import { type Ready, undone } from '../gates/ready.ts';
import { isSteady } from '../gates/shown.ts';
import { ASK_PART, WATCH_START } from '../model/special.ts';
import type { UsedIds } from '../model/usedIds.ts';
import type { Step, StepId } from '../types.ts';
import { faultOf } from '../verdict/blame.ts';

const LOOK = 'look-inside';
const ADDED = 'new-part';
const UPDATED = 'fw-update';
/** Hands were in it before it failed, or it fails when it is touched. */
export const HANDS_IN: readonly string[] = ['someone-worked', 'cleaned', ADDED];
const TOUCHED = 'touched';
const NOTES = 'setup-notes';
const AS_BEFORE = 'as-before';
const WAIT_TRAIN = 'wait-train';
/** What it goes by. */
export const CHANGED_FIRST: UsedIds = {
  steps: [LOOK, NOTES, AS_BEFORE, WAIT_TRAIN],
  changes: [UPDATED, ...HANDS_IN],
};
/** What is put right by seating or plugging is looked for by eye from this chance on. Common practice, no source. */
const WORTH_A_LOOK = 0.25;

/**
 * What is different since it worked comes before the plan: which part was added is asked, the machine is tried as it was
 * before it, and where hands were in the case the eyes look first. None of it before it was seen to fail.
 */
export function changedFirst(ready: Ready, planned: Step): StepId | null {
  const { model, tracing, suspects } = ready;
  const { changed, onlyWhen } = tracing.told;
  if (!tracing.log.some((entry) => !entry.struck && entry.step === WATCH_START)) return null;
  const added = changed.includes(ADDED);
  const asked = added ? undone(ready, ASK_PART) : null;
  if (asked !== null) return asked;
  // What an update may have set otherwise is looked up before anything is changed.
  const notes = changed.includes(UPDATED) && planned.handsOn > 1 ? undone(ready, NOTES) : null;
  if (notes !== null) return notes;
  if (planned.open.length === 0) return null;
  // New memory may only be learning its times: that takes no hand.
  const learns = added && newPartOf(tracing) === 'dimm' ? undone(ready, WAIT_TRAIN) : null;
  if (learns !== null) return learns;
  // A supply takes its leads with it: these are looked at, and not tried once more.
  const tried = added && newPartOf(tracing) !== 'supply' && isSteady(tracing) ? undone(ready, AS_BEFORE) : null;
  if (tried !== null) return tried;
  const hands = changed.some((id) => HANDS_IN.includes(id)) || onlyWhen.includes(TOUCHED);
  const loose = suspects.reduce(
    (sum, { fault, p }) => sum + (faultOf(model, fault).mendedBy === 'reseating' ? p : 0),
    0,
  );
  return hands && loose >= WORTH_A_LOOK ? undone(ready, LOOK) : null;
}
