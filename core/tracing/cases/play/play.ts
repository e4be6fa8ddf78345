import { knownStep } from '../../live/model/special.ts';
import type { FaultModel, Step, TracingCase } from '../../live/types.ts';
import type { Answer } from '../answer/answer.ts';
import { answerLine } from '../answer/answerLine.ts';
import { toTracing } from '../bench/toTracing.ts';
import type { BenchCase } from '../form/benchCase.ts';
import type { CaseLine } from '../form/caseLine.ts';
import { kindsOfStep } from '../kinds/kindsOfStep.ts';
import { Answerer } from './answerer.ts';

/** A case that is not ended after so many steps is cut off. */
export const MOST_STEPS = 36;

/** One proposal of the engine, with the log it was made at. */
export type Position = {
  readonly log: readonly string[];
  readonly answer: Answer;
  readonly mended: boolean;
  /** What each step that could be started now does to the machine, in the kinds of the bench cases. */
  readonly kindsOf: (step: string) => ReadonlySet<string>;
};

export type Played = {
  readonly case: BenchCase;
  /** One for each step proposed, and the end, where it came to one. */
  readonly positions: readonly Position[];
  /** The whole log, what was there before in it. */
  readonly log: readonly string[];
  readonly cut: boolean;
  /** Hands-on minutes of all steps with what they open, and closing at the end; waiting apart. */
  readonly minutes: number;
  readonly waiting: number;
};

/**
 * Plays a case to its end: the engine proposes, the case answers. Minutes hands-on and waiting, apart.
 * @throws {Error} for a case that the engine cannot read: a defect, for cases are refused where they are read.
 */
export function play(model: FaultModel, bench: BenchCase): Played {
  const machine = new Answerer(model, bench);
  const positions: Position[] = [];
  let log: readonly string[] = bench.before;
  let [minutes, waiting] = [0, 0];
  for (;;) {
    const line: CaseLine = { ...bench, before: [...log] };
    const answer = answerLine(model, line, { ahead: false });
    const now = toTracing(model, line);
    if (!('case' in answer) || 'is' in now) throw new Error(`${bench.id}: ${'at' in answer ? answer.at : ''}`);
    const { tracing } = now;
    positions.push({ log, answer, mended: machine.mended, kindsOf: (id) => kindsNow(model, tracing, id) });
    const cut = answer.step !== null && positions.length > MOST_STEPS;
    if (answer.step === null || cut)
      return { case: bench, positions, log, cut, minutes: minutes + answer.closing, waiting };
    minutes += answer.minutes;
    waiting += answer.waiting;
    log = [...log, `${answer.step}:${machine.does(tracing, answer.step)}`];
  }
}

function kindsNow(model: FaultModel, tracing: TracingCase, id: string): ReadonlySet<string> {
  const step: Step | undefined = knownStep(model, id);
  return step ? kindsOfStep(model, tracing, step) : new Set();
}
