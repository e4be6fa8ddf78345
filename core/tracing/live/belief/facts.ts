import type { FaultModel, MachineFact, TracingCase } from '../types.ts';

/** Is this so of the machine, as far as it is known? What nobody looked at or told is not so. */
export function isSo(fact: MachineFact, { machine, switches }: TracingCase): boolean {
  const has = (id: (typeof switches)[number]) => switches.includes(id);
  switch (fact) {
    case 'no-liquid':
      return !has('closed-liquid') && !has('open-loop');
    case 'no-card':
      return machine.card === false;
    case 'no-graphics':
      return machine.card === false && machine.graphicsInProcessor === false;
    case 'card-inside':
      return machine.card === true;
    case 'no-modular-supply':
      return machine.modularSupply === false;
    case 'no-outside-supply':
      return !has('outside-supply');
    case 'outside-supply':
      return has('outside-supply');
    case 'no-battery':
      return !has('own-battery');
    case 'no-array':
      return !has('drive-array');
    case 'one-dimm':
      return machine.dimms === 1;
    case 'one-drive':
      return machine.drives === 1;
    case 'aged':
      return has('aged');
    case 'encrypted':
      return machine.encrypted === 'yes';
    case 'too-few-watts':
      return machine.supplyWatts !== null && machine.needsWatts !== null && machine.needsWatts > machine.supplyWatts;
    case 'riser-inside':
      return machine.riser === true;
    case 'no-riser':
      return machine.riser === false;
    case 'enough-watts':
      return machine.supplyWatts !== null && machine.needsWatts !== null && machine.needsWatts <= machine.supplyWatts;
  }
}

/** How many times likelier each fault is by what is known of the machine. */
export function byFacts(model: FaultModel, tracing: TracingCase): Float64Array {
  return Float64Array.from(model.faults, ({ given }) =>
    given.reduce((times, one) => (isSo(one.is, tracing) ? times * one.times : times), 1),
  );
}
