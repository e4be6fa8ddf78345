import type words from '../../../../assets/words/en/plan.json';

/** The name of what is wrong with a problem, a log or the plan asked for. Each has words; one without does not compile. */
export type PlanRefusalName = keyof (typeof words)['says'];

/** Why no plan is made: a name and the facts. */
export type PlanRefusal = { readonly refused: PlanRefusalName; readonly [fact: string]: unknown };
