import { whyNot } from '../../live/gates/available.ts';
import { gatesNow, openedByNoWord } from '../../live/gates/gates.ts';
import { lackingWords } from '../../live/gates/ownersWords.ts';
import type { Belief, FaultModel, MachineNeed, NotOffered, TracingCase } from '../../live/types.ts';
import type { ClosedGate, StepState } from './answer.ts';

/** What a step needs of the log rather than of the machine. */
const ONLY_AFTER: readonly MachineNeed[] = [
  'named-part',
  'cure-to-prove',
  'after-our-work',
  'works-here',
  'gate-to-clear',
  'failed-here',
  'swept',
  'word-lacking',
];
type Stands = { readonly steps: readonly StepState[]; readonly gates: readonly ClosedGate[] };

/** Whether each step of the model can be started now, and the gates that hold any of them back. */
export function stepStates(model: FaultModel, tracing: TracingCase, suspects: Belief['suspects']): Stands {
  const why = whyNot(model, tracing, suspects);
  const now = gatesNow(model, tracing, suspects);
  const gates = new Map<string, ClosedGate>();
  const steps = model.steps.map((step): StepState => {
    const not = why(step);
    if (not === null) return { id: step.id, state: 'offered', by: [] };
    if (not.is !== 'gate') return { id: step.id, ...stateOf(not, lackingWords(model, tracing, step)) };
    const closed = now.ofStep(step, null);
    for (const { gate } of closed)
      gates.set(gate.id, {
        id: gate.id,
        opensBy: gate.until.map((list) => list.map((one) => one.step)),
        harm: gate.harm,
      });
    return {
      id: step.id,
      state: closed.some(({ gate }) => openedByNoWord(gate)) ? 'held' : 'own-word',
      by: closed.map(({ gate }) => gate.id),
    };
  });
  return { steps, gates: [...gates.values()] };
}

function stateOf(why: NotOffered['why'], lacking: readonly string[]): Pick<StepState, 'state' | 'by'> {
  switch (why.is) {
    case 'word':
      return { state: 'no-consent', by: lacking };
    case 'machine':
      return { state: 'not-here', by: [ONLY_AFTER.includes(why.need) ? 'only-after' : 'machine'] };
    case 'life':
      return { state: 'not-here', by: ['reach'] };
    case 'no-loaner':
    case 'own-first':
      return { state: 'not-here', by: ['loaner'] };
    case 'other-group':
      return { state: 'not-here', by: ['trouble'] };
    case 'done':
      return { state: 'not-here', by: ['done'] };
    case 'gate':
      return { state: 'own-word', by: [why.gate] };
  }
}
