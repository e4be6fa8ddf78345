import { assemblyOf, closingMinutes } from '../../live/assembly.ts';
import { suspectsOf } from '../../live/belief/belief.ts';
import { posteriorOf } from '../../live/belief/posterior.ts';
import { COULD_NOT } from '../../live/couldNot.ts';
import { stepOf } from '../../live/model/special.ts';
import { offerStep } from '../../live/offer/offerStep.ts';
import { cautionLetter } from '../../live/renamed/aliases.ts';
import type { FaultModel, StepView, TracingCase } from '../../live/types.ts';
import { verdictAfter } from '../../live/verdict/verdictAfter.ts';
import { partsUsed } from '../bench/logged.ts';
import { type BadLine, toTracing } from '../bench/toTracing.ts';
import type { CaseLine } from '../form/caseLine.ts';
import { type Answer, PROTOCOL } from './answer.ts';
import { asksOf } from './asks.ts';
import { endOf, said } from './said.ts';
import { stepStates } from './stepStates.ts';
import { suspectParts } from './suspectParts.ts';
import { thenSteps } from './thenSteps.ts';

/** `ahead`: the two steps that would follow are computed too, at twice the price. */
export type AnswerHow = { readonly ahead: boolean };

/** The answer to one case line by the screen's own method; a line that is no case is answered with what is wrong in it. */
export function answerLine(model: FaultModel, line: CaseLine, { ahead }: AnswerHow): Answer | BadLine {
  const bench = toTracing(model, line);
  if ('is' in bench) return bench;
  const { tracing, ignored } = bench;
  const posterior = posteriorOf(model, tracing);
  const suspects = suspectsOf(model, posterior);
  const offer = offerStep(model, tracing, { method: 'rollout' });
  const { steps, gates } = stepStates(model, tracing, suspects);
  const { next } = offer;
  const asks = asksOf(model, offer);
  const verdict = next
    ? said(model, verdictAfter(model, tracing, posterior), suspects)
    : endOf(model, offer.stop ?? noStep, suspects, asks.length > 0);
  return {
    case: line.id,
    protocol: PROTOCOL,
    step: next?.step ?? null,
    minutes: next?.handsOn ?? 0,
    waiting: next?.waiting ?? 0,
    closing: closingMinutes(assemblyOf(model, tracing.switches), offer.openStates),
    outcomes: next ? outcomesOf(model, next) : [],
    uses: next ? usesOf(model, tracing, next) : [],
    reasons: next?.facts.map(({ fact }) => fact) ?? [],
    cautions: next?.cautions.map(cautionLetter) ?? [],
    gates,
    suspects: suspectParts(model, posterior, suspects),
    // biome-ignore lint/suspicious/noThenProperty: the protocol names it so, and an answer is never awaited
    then: next && ahead ? thenSteps(model, tracing, next).map(({ step }) => step) : [],
    steps,
    asks,
    verdict,
    ...(ignored.length > 0 ? { ignored } : {}),
  };
}

const noStep = { stop: 'hand-over', expectedMinutes: 0, handOverMinutes: 0, because: 'no-step-left' } as const;

function outcomesOf(model: FaultModel, next: StepView): Answer['outcomes'] {
  const { normal } = stepOf(model, next.step);
  const own = next.outcomes.map(({ outcome, p }, o) => ({ id: outcome, p, normal: o === normal }));
  return [...own, { id: COULD_NOT, p: 0, normal: false }];
}

const usesOf = (model: FaultModel, tracing: TracingCase, next: StepView): readonly string[] =>
  partsUsed(model, tracing, stepOf(model, next.step)).map(({ id }) => id);
