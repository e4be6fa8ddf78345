import { logged, type RefereeState } from './state.ts';
import { type Doing, doingsOf } from './stepTable.ts';

/** Letters of cautions that a step must show, however it was begun, by what is done in it. */
const CAUTIONS: readonly (readonly [letter: string, doings: readonly Doing[]])[] = [
  ['M', ['pulls-mains']],
  ['W', ['writes']],
  ['D', ['clears', 'foreign-board', 'rig-processor']],
  ['F', ['firmware', 'firmware-rescue', 'firmware-clip']],
  ['P', ['processor-out']],
  ['B', ['ours-supply', 'ours-processor', 'ours-board', 'ours-drive', 'ours-card', 'ours-dimm', 'ours-cooler']],
];

const doneIn = (step: string, doings: readonly Doing[]) =>
  doingsOf(step)?.some((doing) => doings.includes(doing)) ?? false;

/** The letters of the cautions due at a step. Others may stand there too. */
export const cautionsDue = (step: string): readonly string[] => [
  ...CAUTIONS.filter(([, doings]) => doneIn(step, doings)).map(([letter]) => letter),
  ...(doneIn(step, ['cooler-off']) && doneIn(step, ['start', 'start-ours']) ? ['K'] : []),
];

/** What a machine that was on before can have done to it without a new risk: it is on once more, and looked at. */
const RISKLESS: readonly Doing[] = ['start', 'start-ours', 'their-system', 'reads-data'];

/**
 * Whether it can be true of a step that nothing is put at risk: no hand goes in, nothing is written, cleared, lent, loaded
 * or sent, and the machine is not switched on for the first time here.
 */
export const canBeRiskless = (state: RefereeState, step: string): boolean => {
  const doings = doingsOf(step) ?? [];
  return doings.length === 0 || (logged(state, 'watch-start') && doings.every((doing) => RISKLESS.includes(doing)));
};
