import { type Doing, doingsOf } from './stepTable.ts';

/** Letters of cautions that a step must show, however it was begun, by what is done in it. */
const CAUTIONS: readonly (readonly [letter: string, doings: readonly Doing[]])[] = [
  ['M', ['pulls-mains']],
  ['K', ['cooler-off']],
  ['W', ['writes']],
  ['D', ['clears', 'foreign-board', 'rig-processor']],
  ['F', ['firmware', 'firmware-rescue', 'firmware-clip']],
  ['P', ['processor-out']],
  ['B', ['ours-supply', 'ours-processor', 'ours-board', 'ours-drive', 'ours-card', 'ours-dimm', 'ours-cooler']],
];

const doneIn = (step: string, doings: readonly Doing[]) =>
  doingsOf(step)?.some((doing) => doings.includes(doing)) ?? false;

/** The letters of the cautions due at a step. Others may stand there too. */
export const cautionsDue = (step: string): readonly string[] =>
  CAUTIONS.filter(([, doings]) => doneIn(step, doings)).map(([letter]) => letter);

/** Whether it can be true of a step that nothing is put at risk: hands stay out, and it is neither fed nor written. */
export const canBeRiskless = (step: string): boolean => (doingsOf(step) ?? []).length === 0;
