import { FACTS_BY } from '../gates/gates.ts';
import { PICTURE_WITHOUT } from '../gates/life.ts';
import { MACHINE_NEEDS_BY } from '../gates/machineNeeds.ts';
import { STEADY } from '../gates/shown.ts';
import { SEEN_LOOSE } from '../gates/standsNow.ts';
import { SPECIAL_FAULTS, SPECIAL_STEPS } from '../model/special.ts';
import type { UsedIds } from '../model/usedIds.ts';
import { CHANGED_FIRST } from '../offer/changedFirst.ts';
import { EASIER_FIRST } from '../offer/easierFirst.ts';
import { FIRST_MOVES } from '../offer/firstMoves.ts';
import { FOUND_THEN } from '../offer/foundThen.ts';
import { CLEARS } from '../safety/plainDeeds.ts';
import { LAST_WORD } from '../verdict/lastWord.ts';
import { FINDINGS } from './checkBench.ts';
import { DANGERS_BY } from './checkCautions.ts';

/** Every id of a fault model that code goes by, with the file that does: a new one is named here. */
export const USED_BY_CODE: readonly (readonly [file: string, used: UsedIds])[] = [
  ['model/special', { faults: SPECIAL_FAULTS, steps: SPECIAL_STEPS }],
  ['model/checkBench', { shown: FINDINGS }],
  ['model/checkCautions', DANGERS_BY],
  ['safety/plainDeeds', { handlings: CLEARS }],
  ['gates/gates', FACTS_BY],
  ['gates/life', { shown: PICTURE_WITHOUT }],
  ['gates/shown', { often: STEADY }],
  ['gates/standsNow', { shown: SEEN_LOOSE }],
  ...MACHINE_NEEDS_BY.map((used) => ['gates/machineNeeds', used] as const),
  ['offer/changedFirst', CHANGED_FIRST],
  ['offer/firstMoves', FIRST_MOVES],
  ['offer/easierFirst', EASIER_FIRST],
  ...FOUND_THEN.map((used) => ['offer/foundThen', used] as const),
  ['verdict/lastWord', LAST_WORD],
];
