import { assemblyOf, movesBefore } from '../assembly.ts';
import { faultNumber } from '../model/special.ts';
import type { FaultModel, ReasonFact, StateId, Step, StepView, Suspect, TracingCase } from '../types.ts';
import { loanerFor } from './available.ts';
import { byFault, faultsThere, greatest } from './faultsThere.ts';
import type { ThenWatch } from './mendAndWatch.ts';
import { chancesToTellApart } from './sweep.ts';
import type { LiveProblem } from './toProblem.ts';
import { handsOnOf } from './weights.ts';

/** How many suspects are named after an outcome. */
const NAMED = 3;
/** A step that moves no suspect by more than this tells nothing. */
const TELLS = 0.02;

/** One step as the Bench shows it: minutes, moves, outcomes with what each would leave, cautions, and the facts behind it. */
export function seeStep(
  model: FaultModel,
  tracing: TracingCase,
  live: LiveProblem,
  at: number,
  open: readonly StateId[],
  suspects: readonly Suspect[],
): StepView {
  const step = live.steps[at] as Step;
  const planned = live.own[at];
  const watch = live.watches[at] ?? null;
  const { moves } = movesBefore(assemblyOf(model, tracing.switches), open, step);
  const there = faultsThere(live);
  const { prior } = live.problem;
  const now = byFault(there, prior);
  const apart = chancesToTellApart(model, step, suspects);
  const joint = new Float64Array(prior.length);
  const idOf = (at: number): string => model.faults[there.faults[at] as number]?.id ?? '';
  const outcomes = step.outcomes.map((outcome, o) => {
    const row = planned?.chance[o] as Float64Array;
    let p = 0;
    for (let w = 0; w < joint.length; w++) {
      joint[w] = (prior[w] as number) * (row[w] as number);
      p += joint[w] as number;
    }
    if (p > 0) for (let w = 0; w < joint.length; w++) joint[w] = (joint[w] as number) / p;
    const then = byFault(there, joint);
    p = apart?.[o] ?? p;
    return {
      view: {
        outcome: outcome.id,
        p,
        leaves: greatest(then, NAMED).map((at) => ({ fault: idOf(at), p: then[at] as number })),
        ends: (watch ? planned : live.problem.steps[at])?.cures[o] ?? false,
      },
      after: then,
    };
  });
  const moved = now.map((before, at) =>
    outcomes.reduce(
      (most, { view, after }) => Math.max(most, view.p > 0.001 ? Math.abs((after[at] as number) - before) : 0),
      0,
    ),
  );
  const risk = planned?.harm
    ? planned.harm.reduce((sum, minutes, w) => sum + minutes * (live.problem.prior[w] ?? 0), 0)
    : 0;
  const borrows = [step.handling.borrows, ...step.handling.alsoBorrows]
    .filter((kind) => kind !== null)
    .map((kind) => {
      const found = loanerFor(tracing, kind);
      return { kind, loaner: 'loaner' in found ? found.loaner.id : null };
    });
  return {
    step: step.id,
    handsOn: handsOnOf(model, tracing, step) + moves.reduce((sum, move) => sum + move.minutes, 0),
    waiting: step.waiting,
    moves,
    cost: (planned?.minutes ?? 0) + moves.reduce((sum, move) => sum + move.minutes, 0) + risk,
    risk,
    outcomes: outcomes.map(({ view }) => view),
    splits: greatest(moved, NAMED)
      .filter((at) => (moved[at] as number) > TELLS)
      .map(idOf),
    cautions: step.cautions,
    borrows,
    facts: factsOf(
      model,
      tracing,
      step,
      Math.max(0, ...moved),
      moves.length === 0,
      risk,
      suspects,
      outcomes.map(({ view }) => view),
      watch,
    ),
  };
}

/** The facts that decided: what it splits, what told made likely, what it costs, what is at risk. The first two are shown. */
function factsOf(
  model: FaultModel,
  tracing: TracingCase,
  step: Step,
  tells: number,
  nothingToOpen: boolean,
  risk: number,
  suspects: readonly Suspect[],
  outcomes: StepView['outcomes'],
  watch: ThenWatch | null,
): readonly ReasonFact[] {
  const facts: ReasonFact[] = [];
  const ending = outcomes.find((outcome) => outcome.ends && outcome.p > 0.02);
  if (ending)
    facts.push({
      fact: 'splits',
      faults: ending.leaves.filter((one) => one.p > 0.05).map((one) => one.fault),
      p: ending.p,
      outcome: ending.outcome,
    });
  else if (tells > TELLS) {
    const sharpest = outcomes
      .filter((outcome) => outcome.p > 0.001)
      .toSorted((a, b) => (b.leaves[0]?.p ?? 0) - (a.leaves[0]?.p ?? 0))[0];
    if (sharpest)
      facts.push({
        fact: 'splits',
        faults: sharpest.leaves.map((one) => one.fault),
        p: sharpest.p,
        outcome: sharpest.outcome,
      });
  } else facts.push({ fact: 'tells-nothing' });
  if (watch) facts.push({ fact: 'then-watch', ...watch });
  facts.push(...toldFacts(model, tracing, step, suspects));
  if (step.handsOn <= 2 && nothingToOpen) facts.push({ fact: 'cheap', minutes: step.handsOn });
  if (risk > 5) facts.push({ fact: 'dear', minutes: risk, because: 'harm' });
  const opened = model.gates.find(
    (gate) =>
      gate.until.some((list) => list.some((one) => one.step === step.id)) &&
      !tracing.log.some((entry) => entry.step === step.id),
  );
  if (opened) facts.push({ fact: 'opens', gate: opened.id });
  if (step.handling.borrows === null && step.harm.length === 0) facts.push({ fact: 'nothing-at-risk' });
  return facts;
}

function toldFacts(
  model: FaultModel,
  tracing: TracingCase,
  step: Step,
  suspects: readonly Suspect[],
): readonly ReasonFact[] {
  for (const suspect of suspects.slice(0, 6)) {
    const touches =
      (step.mends[suspect.fault] ?? 0) > 0 ||
      (model.faults[faultNumber(model, suspect.fault)]?.circuits ?? []).some((circuit) =>
        step.takesOut.includes(circuit),
      );
    if (!touches) continue;
    const history = model.evidence.find(
      (one) => tracing.told.changed.includes(one.id) && (one.multiplies[suspect.fault] ?? 1) > 1,
    );
    if (history)
      return [
        {
          fact: 'told-changed',
          history: history.id,
          fault: suspect.fault,
          times: history.multiplies[suspect.fault] ?? 1,
        },
      ];
    return [{ fact: 'likely', fault: suspect.fault, p: suspect.p }];
  }
  return [];
}
