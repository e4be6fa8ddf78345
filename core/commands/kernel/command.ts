import type { z } from 'zod';
import type { Tag } from '../../custody/part.ts';
import type { View } from '../../entries/view.ts';
import type { EnquiryId, JobId, MachineId, OwnerId, PartId } from '../../ids.ts';
import type { Job } from '../../job/job.ts';
import type { Stage } from '../../stage.ts';
import type { Asking } from './asking.ts';
import type { Decision } from './decision.ts';
import { refuse } from './decision.ts';
import { bound, type Decide } from './signedContent.ts';

/** Which streams a command looks at: the service loads these and their versions before it asks for a decision. */
export type About = {
  readonly job?: JobId;
  readonly olderJob?: JobId | undefined;
  readonly owner?: OwnerId | undefined;
  readonly machine?: MachineId | undefined;
  /** Every job of that owner is looked at. */
  readonly ownersJobs?: boolean;
  readonly enquiry?: EnquiryId | undefined;
  /** A machine that may be here already: the job it has now is looked at. */
  readonly here?: MachineId | undefined;
  readonly parts?: readonly PartId[];
  readonly tags?: readonly Tag[];
  /** The asker's hands go on or off something: other jobs where they have work under way are looked at. */
  readonly hands?: boolean;
  /** How the shop's people get in is looked at. */
  readonly people?: boolean;
  /** The command issues papers, so the year's counts are needed. */
  readonly papers?: readonly string[];
};

/** A command of the shop: what it takes, where it is allowed, what it comes to. */
export type Command<Name extends string = string, Input = unknown> = {
  readonly name: Name;
  readonly input: z.ZodType<Input>;
  /** Stages of the job in which it is allowed; `no-job` when it is about no job. */
  readonly stages: readonly Stage[] | 'no-job';
  readonly about: (input: Input) => About;
  /** What it comes to. Refuses `content-changed` where a signature in the input names other content than it makes. */
  readonly decide: Decide<Input>;
  /** The same decision before anything in it is signed: for showing what would be. */
  readonly draft: Decide<Input>;
};

/** A command about a job, allowed in some of its stages. The stage is checked before `decide` is asked. */
export function jobCommand<Name extends string, Input extends { readonly job: JobId }>(
  name: Name,
  input: z.ZodType<Input>,
  stages: readonly Stage[],
  decide: (view: View & { readonly job: Job }, input: Input, asking: Asking) => Decision,
  about: (input: Input) => Omit<About, 'job'> = () => ({}),
): Command<Name, Input> {
  const draft: Decide<Input> = (view, given, asking) => {
    const { job } = view;
    if (!job) return refuse('no-such-job', { job: given.job });
    if (!stages.includes(job.stage))
      return refuse('not-at-this-stage', { command: name, stage: job.stage, allowed: stages });
    return decide({ ...view, job }, given, asking);
  };
  return {
    name,
    input,
    stages,
    about: (given) => ({ ...about(given), job: given.job }),
    decide: bound(name, draft),
    draft,
  };
}

/** A command about no job. */
export const shopCommand = <Name extends string, Input>(
  name: Name,
  input: z.ZodType<Input>,
  about: (input: Input) => About,
  decide: Decide<Input>,
): Command<Name, Input> => ({ name, input, stages: 'no-job', about, decide: bound(name, decide), draft: decide });
