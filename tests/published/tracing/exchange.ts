/** A tracing problem as its file says it: what the tests build and read, apart from the planner's own types. */
export type ExchangeStep = {
  id: string;
  minutes: number;
  waiting?: number;
  open?: string[];
  closed?: string[];
  outcomes: string[];
  cures?: string[];
  chance: Record<string, number[]>;
  harm?: Record<string, number>;
  finish?: Record<string, number>;
};

export type ExchangeState = { id: string; opening: number; closing: number; within: string | null };

export type Exchange = {
  faults: { id: string; weight: number }[];
  assembly?: ExchangeState[];
  steps: ExchangeStep[];
  waitingWeight: number;
  handOver: number;
};

export type WrittenPolicy = 'done' | 'hand over' | { step: string; then: Record<string, WrittenPolicy> };

/** A repair that cures its fault for sure, as the classic papers have it: it works or all is as before. */
export function repair(
  id: string,
  minutes: number,
  cures: Record<string, number>,
  more: Partial<ExchangeStep> = {},
): ExchangeStep {
  const rows = Object.entries(cures).map(([fault, chance]) => [fault, [chance, 1 - chance]] as const);
  return {
    id,
    minutes,
    outcomes: ['works', 'same'],
    cures: ['works'],
    chance: { ...Object.fromEntries(rows), '*': [0, 1] },
    ...more,
  };
}
