import { faultNumber } from '../model/special.ts';
import type { ThenWatch } from '../problem/mendAndWatch.ts';
import { deedsOf } from '../safety/deeds.ts';
import type { FaultModel, ReasonFact, Step, StepId, StepView, Suspect, TracingCase } from '../types.ts';

/** A step that moves no suspect by more than this tells nothing. Common practice, no source. */
export const TELLS = 0.02;
/** A suspect that an outcome leaves is named from this chance on; the likeliest always. Common practice, no source. */
const LEFT_FROM = 0.05;
/** Harm and slip of more minutes than this are said. Common practice, no source. */
const RISK_SAID = 5;
/** Minutes up to which a step is cheap. Common practice, no source. */
const CHEAP = 2;

/** An outcome as it is shown, with how far it would move the belief: total variation, 0..1. */
export type Weighed = StepView['outcomes'][number] & { readonly moves: number };

/** What the reasons of a step are made of. `firstFor`: the step that it only opens the way to, `offered`: it is the one on offer. */
export type Reasoned = {
  readonly model: FaultModel;
  readonly tracing: TracingCase;
  readonly step: Step;
  readonly tells: number;
  readonly nothingToOpen: boolean;
  readonly risk: number;
  readonly suspects: readonly Suspect[];
  readonly outcomes: readonly Weighed[];
  readonly watch: ThenWatch | null;
  readonly offered: boolean;
  readonly firstFor: StepId | null;
};

/** The facts that decided, the weightiest first: what it opens, what it would show, what was told, what it costs and risks. */
export function reasonsOf(one: Reasoned): readonly ReasonFact[] {
  const { step, watch, nothingToOpen, risk, firstFor } = one;
  return [
    ...(firstFor === null ? [] : [{ fact: 'first-for', step: firstFor } as const]),
    ...shows(one),
    ...(watch ? [{ fact: 'then-watch', ...watch } as const] : []),
    ...toldFacts(one),
    ...(step.handsOn <= CHEAP && nothingToOpen ? [{ fact: 'cheap', minutes: step.handsOn } as const] : []),
    ...(risk > RISK_SAID ? [{ fact: 'dear', minutes: risk, because: 'harm' } as const] : []),
    ...(isHarmless(one) ? [{ fact: 'nothing-at-risk' } as const] : []),
  ];
}

/**
 * The outcome that matters most, by its chance times how far it would move the belief: never a freak that would be sharp and
 * hardly happens. That a step tells nothing is said of others, never of the one on offer: that one is done for what it opens.
 */
function shows({ outcomes, tells, offered, firstFor }: Reasoned): readonly ReasonFact[] {
  const most = outcomes.toSorted((a, b) => b.p * b.moves - a.p * a.moves)[0];
  if (!most || (tells <= TELLS && !most.ends)) return offered || firstFor !== null ? [] : [{ fact: 'tells-nothing' }];
  const [first, ...rest] = most.leaves;
  const faults = [...(first ? [first] : []), ...rest.filter(({ p }) => p > LEFT_FROM)].map(({ fault }) => fault);
  return [{ fact: 'splits', faults, p: most.p, outcome: most.outcome }];
}

/** Nothing can be hurt, locked or lost by it: it does nothing that can, nothing of ours goes in, and it asks for no care. */
const isHarmless = ({ model, tracing, step }: Reasoned): boolean =>
  step.handling.borrows === null &&
  step.harm.length === 0 &&
  step.slip === null &&
  step.cautions.length === 0 &&
  deedsOf(model, tracing, step).size === 0;

function toldFacts({ model, tracing, step, suspects }: Reasoned): readonly ReasonFact[] {
  for (const suspect of suspects.slice(0, 6)) {
    const touches =
      (step.mends[suspect.fault] ?? 0) > 0 ||
      (model.faults[faultNumber(model, suspect.fault)]?.circuits ?? []).some((circuit) =>
        step.takesOut.includes(circuit),
      );
    if (!touches) continue;
    const { fault } = suspect;
    const history = model.evidence.find(
      (one) => tracing.told.changed.includes(one.id) && (one.multiplies[fault] ?? 1) > 1,
    );
    return history
      ? [{ fact: 'told-changed', history: history.id, fault, times: history.multiplies[fault] ?? 1 }]
      : [{ fact: 'likely', fault, p: suspect.p }];
  }
  return [];
}
