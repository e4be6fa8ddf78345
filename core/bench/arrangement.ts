import type { ThingKind } from '../custody/part.ts';
import type { View } from '../entries/view.ts';
import type { TriedArrangement } from '../job/triedArrangement.ts';
import type { Work } from '../job/work.ts';
import { isKeyOf } from '../table.ts';
import type { Circuit } from '../tracing/live/types.ts';
import type { StepRules } from './tracingDoor.ts';

/** The circuit that is out when a part of this kind is out for the trial itself, rather than only while it is handled. */
const OWN_CIRCUIT: Readonly<Partial<Record<ThingKind, Circuit>>> = {
  supply: 'supply',
  board: 'board',
  processor: 'processor',
  cooler: 'cooler',
  dimm: 'dimm',
  card: 'card',
  riser: 'riser',
  'add-in': 'add-in',
  drive: 'drive',
  'optical-drive': 'drive',
  fan: 'hubs',
  'front-panel': 'front-leads',
};

const DID = { works: 'works', same: 'same', 'fails-again': 'same', worse: 'worse' } as const;

/**
 * The arrangement in which a step was tried, with what the machine did in it: as it stands before its parts go back,
 * with those put in that were only handled. Null when the outcome does not say, when modules were gone through one by
 * one, or when ours lay beside the case: then nobody could go back to it by slots.
 */
export function arrangementOfStep(view: View, rules: StepRules, work: Work, outcome: string): TriedArrangement | null {
  const { machine } = view;
  const means = rules.means[outcome];
  const did = means !== undefined && isKeyOf(DID, means) ? DID[means] : null;
  const beside = work.loaners.some(({ id }) => view.parts.get(id)?.place.at !== 'slot');
  if (!machine || did === null || rules.oneByOne || beside) return null;
  const handled = work.took.filter(
    ({ part, slot }) => machine.inside[slot] === undefined && !isOut(rules, view.parts.get(part)?.kind),
  );
  return {
    run: work.run,
    did,
    inside: { ...machine.inside, ...Object.fromEntries(handled.map(({ part, slot }) => [slot, part])) },
    unplugged: machine.unplugged,
  };
}

/** The arrangement that a proof was made in, as it stands. */
export const arrangementOfProof = ({ machine }: View, work: Work, passed: boolean): TriedArrangement | null =>
  machine && { run: work.run, did: passed ? 'works' : 'same', inside: machine.inside, unplugged: machine.unplugged };

/** A bare board is tried outside its case, though its circuit is in. */
function isOut({ triedWithout }: StepRules, kind: ThingKind | undefined): boolean {
  const own = kind && OWN_CIRCUIT[kind];
  return own === undefined || triedWithout.includes(own) || (kind === 'board' && triedWithout.includes('case'));
}
