import type { Cancel } from '../plan/problem/effort.ts';
import type {
  Belief,
  EngineVerdict,
  FaultModel,
  Group,
  LoggedStep,
  Method,
  ModelRefusal,
  StateId,
  StepId,
  StepOffer,
  StepView,
  SymptomId,
  TracingCase,
} from './types.ts';

/** The doors of the live tracing engine, as the job and the Bench use them. */
export type LiveTracing = {
  /** Reads the model's files (by file name) and checks them; a refusal names file and field. */
  readonly loadFaultModel: (files: { readonly [file: string]: unknown }) => FaultModel | ModelRefusal;
  /** Symptom groups of told or seen terms. */
  readonly readGroups: (model: FaultModel, symptoms: readonly SymptomId[]) => readonly Group[];
  /** What was told beside what was seen. */
  readonly compareToldSeen: (model: FaultModel, told: readonly SymptomId[], seen: readonly SymptomId[]) => ToldSeen;
  readonly belief: (model: FaultModel, tracing: TracingCase) => Belief;
  /** Interim by ratio at once; `rollout` looks two steps ahead. A raised `cancel` throws `Halt`. */
  readonly offerStep: (
    model: FaultModel,
    tracing: TracingCase,
    how: { readonly method: Method; readonly cancel?: Cancel },
  ) => StepOffer;
  readonly reasonFor: (model: FaultModel, tracing: TracingCase, step: StepId) => StepView | null;
  readonly verdictAfter: (model: FaultModel, tracing: TracingCase) => EngineVerdict;
  /** Assembly states that the log leaves open. */
  readonly openStates: (model: FaultModel, tracing: TracingCase) => readonly StateId[];
  /** Is this a step of the model with this outcome? */
  readonly knows: (model: FaultModel, entry: Pick<LoggedStep, 'step' | 'outcome'>) => boolean;
};

export type ToldSeen = {
  readonly agree: readonly SymptomId[];
  readonly onlyTold: readonly SymptomId[];
  readonly onlySeen: readonly SymptomId[];
  readonly groupsTold: readonly Group[];
  readonly groupsSeen: readonly Group[];
  /** The groups differ: the estimate is to be made anew. */
  readonly differ: boolean;
};
