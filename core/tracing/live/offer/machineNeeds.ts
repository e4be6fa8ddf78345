import type { FaultModel, LoggedStep, MachineNeed, Step, TracingCase } from '../types.ts';
import { gateToClear } from './gates.ts';
import { hasFailedHere, standsNow } from './standsNow.ts';

/** Which facts of the machine keep a step from making sense. What is not known does not keep it. */
export function unmetNeed(model: FaultModel, step: Step, tracing: TracingCase): MachineNeed | null {
  return step.asks.find((need) => !holds(model, step, need, tracing)) ?? null;
}

function holds(model: FaultModel, step: Step, need: MachineNeed, tracing: TracingCase): boolean {
  const { machine, switches, log } = tracing;
  const unless = (name: (typeof switches)[number]) => !switches.includes(name);
  const notFalse = (fact: boolean | null) => fact !== false;
  switch (need) {
    case 'graphics-in-processor':
      return notFalse(machine.graphicsInProcessor);
    case 'card':
      return notFalse(machine.card);
    case 'two-dimms':
      return machine.dimms === null || machine.dimms >= 2;
    case 'socketed-memory':
      return unless('soldered-memory');
    case 'socketed-processor':
      return unless('soldered-processor');
    case 'standard-supply':
      return unless('own-make-supply');
    case 'riser':
      return machine.riser === true;
    case 'add-in':
      return notFalse(machine.addIns);
    case 'modular-supply':
      return notFalse(machine.modularSupply);
    case 'drive':
      return machine.drives === null || machine.drives > 0;
    case 'firmware-rescue':
      return machine.firmwareRescue === true;
    case 'second-slot':
      return machine.slots === null || machine.slots >= 2;
    case 'key-in-hand':
      return machine.keyInHand;
    case 'named-part':
      return standsNow(model, tracing) === 'works-without';
    case 'swept':
      return log.some((entry) => !entry.struck && sweptClean(model, entry));
    case 'cure-to-prove':
      return log.some(
        (entry) =>
          !entry.struck &&
          model.steps[model.stepIndex.get(entry.step) ?? -1]?.outcomes.some(
            ({ id, meaning }) => id === entry.outcome && meaning.means === 'works',
          ),
      );
    case 'works-here':
      return standsNow(model, tracing) === 'works';
    case 'gate-to-clear':
      return gateToClear(model, tracing, step.id);
    case 'failed-here':
      return hasFailedHere(model, tracing);
    case 'after-our-work':
      return log.some((entry) => !entry.struck);
  }
}

function sweptClean(model: FaultModel, entry: LoggedStep): boolean {
  const step = model.steps[model.stepIndex.get(entry.step) ?? -1];
  return (
    step?.kind === 'sweep' && step.outcomes.some((one) => one.id === entry.outcome && one.meaning.means === 'works')
  );
}
