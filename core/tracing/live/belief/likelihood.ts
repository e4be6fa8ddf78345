import { at, nth } from '../../../figures/rows.ts';
import { NEW_PARTS, type NewPart } from '../case.ts';
import { ASK_PART, DISK_LOCKED } from '../model/special.ts';
import type { Fault, FaultModel, TracingCase } from '../types.ts';
import { byFacts } from './facts.ts';
import { byTerms } from './terms.ts';

/**
 * How many times likelier each fault is by all that was told and is known beside the groups: what changed last and "only
 * when", the very terms, facts of the machine, the part that was added, what the technician thinks. What the machine is said not to
 * have is hardly at fault. Answers `times` × that.
 */
export function likelihoodOf(model: FaultModel, tracing: TracingCase): (f: number, times: number) => number {
  const terms = byTerms(model, tracing);
  const facts = byFacts(model, tracing);
  const newPart = newPartOf(tracing);
  const added = newPart === null ? {} : (model.added.get(newPart) ?? {});
  return (f, times) => {
    const fault = nth(model.faults, f);
    return (
      times *
      historyOf(model, tracing, fault.id) *
      at(terms, f) *
      at(facts, f) *
      (added[fault.id] ?? 1) *
      (fault.id === tracing.hunch ? model.hunch : 1) *
      machineFactor(fault, tracing)
    );
  };
}

/** What was told of "how often", as the model knows it. */
export const oftenTold = ({ often }: FaultModel, { told }: TracingCase) =>
  often.filter(({ id }) => told.often.includes(id));

/** What the machine is said not to have can hardly be at fault; it may have been said wrongly, once in fifty. From memory, no source. */
const SAID_ABSENT = 0.02;

function machineFactor({ id, circuits }: Fault, { machine }: TracingCase): number {
  const absent =
    (machine.riser === false && circuits.includes('riser')) ||
    (machine.addIns === false && circuits.includes('add-in')) ||
    (machine.card === false &&
      (circuits.includes('card') || circuits.includes('card-slot') || circuits.includes('aux-lead'))) ||
    (machine.drives === 0 && circuits.includes('drive')) ||
    (machine.encrypted === 'no' && id === DISK_LOCKED);
  return absent ? SAID_ABSENT : 1;
}

/** How many times likelier a fault is by what changed last and by "only when". */
function historyOf(model: FaultModel, tracing: TracingCase, fault: string): number {
  const said = [...tracing.told.changed, ...tracing.told.onlyWhen];
  return [...model.evidence.filter((each) => said.includes(each.id)), ...oftenTold(model, tracing)].reduce(
    (times, each) => times * (each.multiplies[fault] ?? 1),
    1,
  );
}

/** Which part was added, where it is known: of the machine, or by what was asked and answered. */
export function newPartOf({ machine, log }: TracingCase): NewPart | null {
  const asked = log.findLast((entry) => !entry.struck && entry.step === ASK_PART);
  return machine.newPart ?? NEW_PARTS.find((kind) => kind === asked?.outcome) ?? null;
}
