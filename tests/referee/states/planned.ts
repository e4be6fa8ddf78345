import { answerLine } from '../../../core/tracing/cases/answer/answerLine.ts';
import { toTracing } from '../../../core/tracing/cases/bench/toTracing.ts';
import type { CaseLine } from '../../../core/tracing/cases/form/caseLine.ts';
import type { FaultModel } from '../../../core/tracing/live/types.ts';
import { caseStep } from '../caseNames.ts';
import { breaches } from '../judge.ts';
import { wrongWithProposing } from '../proposal.ts';
import type { Draw } from './drawMachine.ts';
import { type Position, refereeState } from './walk.ts';

/** A machine that is not ended after so many steps is left. */
const MOST_STEPS = 36;
/** Ends that close the tracing; asking and handing over leave the machine as it stands. */
const SETTLED = ['confirmed', 'named', 'cured', 'not-reproduced'];

/**
 * Plays one machine as the planner proposes, each outcome drawn by its own chances, and judges every proposal and the
 * end. Two reasons it may not give and cautions that are due are judged with it.
 */
export function* planned(model: FaultModel, line: CaseLine, draw: Draw): Generator<Position> {
  const log: string[] = [];
  while (log.length < MOST_STEPS) {
    const now = { ...line, before: log };
    const answer = answerLine(model, now, { ahead: false });
    const bench = toTracing(model, now);
    if ('is' in bench || !('case' in answer)) throw new Error(`a drawn machine is no case: ${line.id}`);
    const believed = answer.suspects.flatMap(({ faults }) => faults.map(({ id, p }) => ({ fault: id, p })));
    const state = refereeState(line, bench.tracing, believed);
    const { step } = answer;
    if (step === null) {
      const ends = answer.verdict !== null && SETTLED.includes(answer.verdict.kind);
      const found = ends ? breaches(state, 'settled') : [];
      yield { log: [...log], found: found.map((breach) => ({ step: 'settled', open: 'proposed', breach })) };
      return;
    }
    const wrong = wrongWithProposing(state, {
      step: caseStep(step),
      cautions: answer.cautions,
      reasons: answer.reasons,
    });
    yield { log: [...log], found: wrong.map((breach) => ({ step, open: 'proposed', breach })) };
    log.push(`${step}:${outcomeOf(answer.outcomes, draw)}`);
  }
}

function outcomeOf(outcomes: readonly { readonly id: string; readonly p: number }[], draw: Draw): string {
  const total = outcomes.reduce((sum, { p }) => sum + p, 0);
  let left = draw.next() * total;
  const drawn = outcomes.find(({ p }) => {
    left -= p;
    return left < 0;
  });
  return (drawn ?? draw.oneOf(outcomes)).id;
}
