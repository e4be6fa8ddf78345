const PLAN_POLICIES = ['ratio', 'one-step'] as const;
/** How runs through the plan choose their steps: by p over c at once, or looking one step ahead of it. */
export type PlanPolicy = (typeof PLAN_POLICIES)[number];

const ESTIMATE_POLICIES = [...PLAN_POLICIES, 'two-step'] as const;
/** How the runs of an estimate choose their steps: through the plan, or as the Bench itself goes, looking two steps ahead. */
export type EstimatePolicy = (typeof ESTIMATE_POLICIES)[number];

/** How the runs behind a figure chose their steps; `none` where nothing has to be found any more. */
export const FIGURE_POLICIES = [...ESTIMATE_POLICIES, 'none'] as const;
export type FigurePolicy = (typeof FIGURE_POLICIES)[number];
