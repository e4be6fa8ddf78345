import type { PartKind, ThingKind } from '../../custody/part.ts';
import type { PartId } from '../../ids.ts';
import type { Minutes } from '../../time.ts';
import type { Verdict } from '../entries.ts';
import type { Job } from '../job.ts';
import type { View } from '../view.ts';

/** What a step does with parts, so that it can write its own moves. */
export type Handling = {
  readonly takesOut: readonly PartKind[];
  readonly borrows: ThingKind | null;
  readonly putsBack: 'same-slot' | 'stays-out' | 'asked';
  readonly unplugs: readonly PartKind[];
};

/** What the job needs to know of a step of the fault model. */
export type StepRules = {
  readonly id: string;
  readonly handsOn: Minutes;
  readonly outcomes: readonly string[];
  /** Consents or keys without which it is not started. */
  readonly needs: readonly string[];
  readonly handling: Handling;
};

/** A gate not passed yet: what must be seen or measured first. */
export type OpenGate = { readonly gate: string; readonly first: readonly string[] };

/** What the job asks the tracing engine. Pure; the fault model is behind it. */
export type TracingDoor = {
  readonly rules: (step: string) => StepRules | null;
  readonly gates: (view: View & { readonly job: Job }, step: string, loaner: PartId | null) => readonly OpenGate[];
  /** The faults that now stand above one in a hundred, likeliest first. */
  readonly suspects: (view: View & { readonly job: Job }) => readonly string[];
  /** Can this fault have hurt a part of this kind that was inside with it? */
  readonly harms: (fault: string, kind: ThingKind) => boolean;
  /** What the log so far allows to be said of the fault; null while it must be traced on. */
  readonly verdict: (view: View & { readonly job: Job }) => { readonly is: Verdict['is']; readonly fault: string | null; readonly way: string | null; readonly evidence: readonly string[] } | null;
  /** Which told and seen terms do not agree. */
  readonly differ: (told: readonly string[], seen: readonly string[]) => boolean;
};
