import type { ThingKind } from '../custody/part.ts';
import type { View } from '../entries/view.ts';
import type { PartId } from '../ids.ts';
import type { Job } from '../job/job.ts';
import type { WorkKind } from '../job/work.ts';
import type { Minutes } from '../time.ts';
import type { Fault, Several } from '../tracing/live/model/fault.ts';
import type { LookPlace } from '../tracing/live/model/step.ts';
import type { ModelDifference } from '../tracing/live/shop/modelFiles.ts';
import type {
  Circuit,
  EngineVerdict,
  ModelRefusal,
  OutcomeMeaning,
  Owed,
  StepHandling,
} from '../tracing/live/types.ts';

/** What the job needs to know of a step of the fault model. */
export type StepRules = {
  readonly id: string;
  readonly handsOn: Minutes;
  readonly outcomes: readonly string[];
  /** Places looked at in one go, each with what can be found there; empty: one outcome comes of it. */
  readonly places: readonly LookPlace[];
  /** What each outcome says of the machine. */
  readonly means: { readonly [outcome: string]: OutcomeMeaning['means'] };
  /** Circuits that are out, or replaced by ours, while the step is tried. */
  readonly triedWithout: readonly Circuit[];
  /** It goes through several arrangements, one module after the other. */
  readonly oneByOne: boolean;
  /** Words of the owner's that are given with an outcome, of a step that asks for them. */
  readonly gives: { readonly [outcome: string]: readonly string[] };
  readonly handling: StepHandling;
};

/** A gate not passed yet: what must be seen or measured first. */
export type OpenGate = {
  readonly gate: string;
  readonly first: readonly string[];
  /** The technician's own word may open it: not where data or the owner's word would be hurt. */
  readonly ownWord: boolean;
};

export type JobView = View & { readonly job: Job };

/** What the job asks the tracing engine. Pure; the fault model is behind it. */
export type TracingDoor = {
  readonly rules: (step: string) => StepRules | null;
  /**
   * Which consents, keys and words a step still lacks: neither on the sheet nor given when the owner was asked at the
   * bench. What wants a signature of its own is not given by word of mouth.
   */
  readonly lacking: (view: JobView, step: string) => readonly string[];
  readonly gates: (view: JobView, step: string, loaner: PartId | null) => readonly OpenGate[];
  /** The same rules for work that is no step, by what it does: a proof, a fitting, cleaning. */
  readonly gatesOfWork: (view: JobView, kind: WorkKind, what: string) => readonly OpenGate[];
  /** All circuits out of the machine after this step: what was out before it, with its own back in or left out. */
  readonly leftOut: (view: JobView, step: string, stay: boolean) => readonly string[];
  /** The faults that now stand above one in a hundred, likeliest first. */
  readonly suspects: (view: JobView) => readonly string[];
  /** What a fault blames, and of what a machine has several it is one; null where the model does not know it. */
  readonly fault: (fault: string) => { readonly part: Fault['part']; readonly oneOf: Several | null } | null;
  /** The fault that is likeliest without any technician's own hunch; null where the log rules out everything. */
  readonly likeliest: (view: JobView) => { readonly fault: string; readonly p: number } | null;
  /** Can this fault have hurt a part of this kind that was inside with it? */
  readonly harms: (fault: string, kind: ThingKind) => boolean;
  /**
   * What safety asks for before a verdict may end the tracing, such as the copy of a failing drive, each step with what
   * keeps it from being done now. Where it cannot be done, the owner is asked or the machine handed over: no verdict.
   */
  readonly owed: (view: JobView) => readonly Owed[];
  /** What the log so far allows to be said. */
  readonly verdict: (view: JobView) => EngineVerdict;
  /** Why the delivered fault model does not hold together with these changes; null when it does. */
  readonly refusesModel: (changes: readonly ModelDifference[]) => ModelRefusal | null;
  /** Does what was seen call for a new estimate? */
  readonly differ: (told: readonly string[], seen: readonly string[]) => boolean;
};
