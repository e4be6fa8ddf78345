/** The way of a job. `asked` and `turned-down` belong to enquiries, the rest to jobs. */
export const STAGES = [
  'taken-in',
  'first-power-on',
  'tracing',
  'owners-word-needed',
  'part-on-the-way',
  'fitting',
  'proving',
  'ready',
  'not-collected',
  'home-as-it-came',
  'gone-home',
] as const;
export type Stage = (typeof STAGES)[number];

/** Stages in which hands may be in the machine. */
export const AT_THE_BENCH = [
  'taken-in',
  'first-power-on',
  'tracing',
  'fitting',
  'proving',
  'home-as-it-came',
] as const satisfies readonly Stage[];

/** Stages from which the machine can be handed over. */
export const AT_THE_DOOR = ['ready', 'not-collected', 'home-as-it-came'] as const satisfies readonly Stage[];

/** Is the machine ready to be fetched? */
export const isAtTheDoor = (stage: Stage): boolean => AT_THE_DOOR.some((one) => one === stage);

/** Every stage of a job that has not ended. */
export const OPEN_STAGES = STAGES.filter((stage) => stage !== 'gone-home');
