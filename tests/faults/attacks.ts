import type { Attack } from './attack.ts';
import { AT_WORK } from './attacks/atWork.ts';
import { COPIED } from './attacks/copied.ts';
import { FIRST_START } from './attacks/firstStart.ts';
import { ON_THE_DISK } from './attacks/onTheDisk.ts';

/** Every fault and attack that a shop must survive. A new one is written beside these and added here. */
export const ATTACKS: readonly Attack[] = [...FIRST_START, ...ON_THE_DISK, ...AT_WORK, COPIED];
