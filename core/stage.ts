/** The way of a job. */
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

/** Stages that hands enter by their own word (`go-on`). */
export const GONE_ON_TO = [
  'first-power-on',
  'tracing',
  'part-on-the-way',
  'fitting',
  'proving',
] as const satisfies readonly Stage[];

/** Where a job goes on to from each stage, or back to one that is needed again; from the others it goes by what happens. */
const NEXT_STAGES: Readonly<Partial<Record<Stage, readonly (typeof GONE_ON_TO)[number][]>>> = {
  'taken-in': ['first-power-on'],
  'first-power-on': ['tracing'],
  tracing: ['fitting', 'part-on-the-way'],
  'part-on-the-way': ['fitting', 'tracing'],
  fitting: ['proving', 'tracing', 'part-on-the-way'],
  proving: ['fitting', 'tracing'],
  ready: ['proving'],
};

/** The stages that a job may go on to; work that was agreed by name needs no finding, and is fitted at once. */
export const nextStages = (stage: Stage, agreedByName: boolean): readonly (typeof GONE_ON_TO)[number][] => [
  ...(NEXT_STAGES[stage] ?? []),
  ...(stage === 'taken-in' && agreedByName ? (['fitting'] as const) : []),
];
