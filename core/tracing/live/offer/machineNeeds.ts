import type { MachineNeed, Step, TracingCase } from '../types.ts';

/** Which facts of the machine keep a step from making sense. What is not known does not keep it. */
export function unmetNeed(step: Step, tracing: TracingCase): MachineNeed | null {
  return step.asks.find((need) => !holds(need, tracing)) ?? null;
}

/** Outcomes that show the machine doing here what it should. */
const WORKS_HERE = ['works', 'quiet', 'clean', 'all-good', 'runs', 'nf'];

function holds(need: MachineNeed, { machine, switches, log }: TracingCase): boolean {
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
    case 'cure-to-prove':
      return log.some((entry) => !entry.struck && entry.outcome === 'works');
    case 'works-here':
      return log.some((entry) => !entry.struck && WORKS_HERE.includes(entry.outcome));
    case 'after-our-work':
      return log.some((entry) => !entry.struck);
  }
}
