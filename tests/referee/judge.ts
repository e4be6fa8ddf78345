import type { Breach, Deed, Harm, Sentence } from './breach.ts';
import { BOARD } from './sentences/board.ts';
import { DRIVE } from './sentences/drive.ts';
import { OURS } from './sentences/ours.ts';
import { POWER } from './sentences/power.ts';
import { SHORTS } from './sentences/shorts.ts';
import { WORD } from './sentences/word.ts';
import type { RefereeState } from './state.ts';
import { doingsOf } from './stepTable.ts';

/** Every sentence of the referee. */
export const SENTENCES: readonly Sentence[] = [...POWER, ...SHORTS, ...DRIVE, ...BOARD, ...OURS, ...WORD];

/** What weighs most comes first: people and machine, then what nobody can buy anew. */
const WEIGHT: Readonly<Record<Harm, number>> = { machine: 0, data: 1, ours: 2, word: 3 };

/**
 * Every sentence that doing a step would break, as the machine stands and with what is known of it.
 * @throws {Error} For a step that nobody has read for the step table yet.
 */
export function breaches(state: RefereeState, step: string): readonly Breach[] {
  const doings = doingsOf(step);
  if (doings === undefined) throw new Error(`nobody has read what is done in "${step}"`);
  const deed: Deed = { step, does: (...asked) => asked.some((doing) => doings.includes(doing)) };
  return SENTENCES.flatMap(({ rule, says, harm }) => {
    const hurts = harm(state, deed);
    return hurts === null ? [] : [{ rule, says, harm: hurts }];
  }).sort((one, other) => WEIGHT[one.harm] - WEIGHT[other.harm]);
}

/**
 * Whether proposing a step, or leaving it open to be begun, is a breach.
 * @returns the gravest sentence broken, `null` when there is none.
 * @throws {Error} For a step that nobody has read for the step table yet.
 */
export const judge = (state: RefereeState, step: string): Breach | null => breaches(state, step)[0] ?? null;

/**
 * Whether a step may stand as it does. What harms the machine or ours may be held behind the technician's own word; what
 * harms data or lacks the owner's word is held from everybody.
 * @param open How the step stands: `offered` to anyone, or open to the technician's `own-word`.
 * @returns what is broken by leaving it so.
 */
export const leftOpen = (state: RefereeState, step: string, open: 'offered' | 'own-word'): readonly Breach[] =>
  breaches(state, step).filter(({ harm }) => open === 'offered' || harm === 'data' || harm === 'word');
