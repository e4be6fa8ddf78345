import { PART_KINDS } from '../../custody/part.ts';
import type { FaultModel } from '../../tracing/live/types.ts';
import type { ClosedFacts } from './closedFacts.ts';

/** How often "I think it is …" was right on closed jobs, beside the fault that the model had first at that moment. */
export type ScoredThoughts = {
  readonly scored: number;
  readonly right: number;
  readonly engineRight: number;
  /** Said on jobs whose fault was not settled by their log, or that came back with it: nobody knows. */
  readonly open: number;
};

type ThoughtOn = Pick<ClosedFacts, 'thoughts' | 'verdict' | 'cameBackAs'>;

/**
 * Scores the last hunch of each closed job, and the model's own first thought just then, against what the log confirmed or
 * cured. Both by the same measure: the same fault, or another fault of the same part. What was taken back counts for nothing.
 */
export function scoredThoughts(model: Pick<FaultModel, 'faults'>, jobs: readonly ThoughtOn[]): ScoredThoughts {
  const partOf = (id: string) => model.faults.find((one) => one.id === id)?.part ?? null;
  const same = (thought: string, truth: string) => {
    const part = PART_KINDS.find((kind) => kind === partOf(truth));
    return thought === truth || (part !== undefined && partOf(thought) === part);
  };
  const said = jobs.flatMap((job) => {
    const last = job.thoughts.at(-1);
    return last?.fault ? [{ thought: last.fault, engine: last.engine?.fault ?? null, truth: settledFault(job) }] : [];
  });
  const settled = said.flatMap(({ truth, ...one }) => (truth === null ? [] : [{ ...one, truth }]));
  return {
    scored: settled.length,
    right: settled.filter(({ thought, truth }) => same(thought, truth)).length,
    engineRight: settled.filter(({ engine, truth }) => engine !== null && same(engine, truth)).length,
    open: said.length - settled.length,
  };
}

/** What the log showed it to be: confirmed or cured, and not back since with the same fault. */
function settledFault({ verdict, cameBackAs }: Pick<ThoughtOn, 'verdict' | 'cameBackAs'>): string | null {
  if (cameBackAs?.same === 'same-fault') return null;
  return verdict?.is === 'confirmed' || verdict?.is === 'cured' ? verdict.fault : null;
}
