import type { Refusal } from '../decision.ts';
import type { JobId, MachineId, PartId } from '../ids.ts';
import type { EpochMs } from '../time.ts';
import type { MoveReason, Part, PartEntry, Title } from './ledger.ts';
import type { Machine, MachineEntry } from './machine.ts';
import type { Place } from './place.ts';
import { takesKind } from './slot.ts';

/** One move of one part, as asked. */
export type Move = {
  readonly part: PartId;
  readonly from: Place;
  readonly to: Place;
  readonly job: JobId | null;
  readonly why: MoveReason;
};

/** What the decision looks at: the part, the machines whose slots it leaves or fills, the word on trial parts. */
export type MoveView = {
  readonly part: Part | null;
  readonly machine: (id: MachineId | string) => Machine | null;
  /** May shop parts go into this job's machine for trial? */
  readonly trialAllowed: boolean;
  /** Has the owner's answer to an offer sold or given this part? */
  readonly agreedFor: boolean;
  /** A lending agreement for this part, when there is one. */
  readonly lentUntil: EpochMs | null;
};

export type MoveDecision =
  | { readonly ok: true; readonly entries: readonly (PartEntry | MachineEntry)[] }
  | { readonly ok: false; readonly refusal: Refusal };

/** The machine or rig stream a place belongs to, with its slot; null for places that are no slot. */
export function slotOf(place: Place): { readonly machine: string; readonly slot: string } | null {
  if (place.at === 'slot') return { machine: place.machine, slot: place.slot };
  if (place.at === 'rig') return { machine: place.rig, slot: place.slot };
  return null;
}

/** Are two places the same? Compares only what says where, not since when. */
export function samePlace(a: Place, b: Place): boolean {
  const key = (place: Place): string => {
    switch (place.at) {
      case 'slot':
        return `slot/${place.machine}/${place.slot}`;
      case 'rig':
        return `rig/${place.rig}/${place.slot}`;
      case 'bench':
        return `bench/${place.bench}`;
      case 'tray':
        return `tray/${place.job}/${place.tray}`;
      case 'bin':
        return `bin/${place.bin}`;
      case 'kept':
        return `kept/${place.shelf}`;
      case 'away':
        return `away/${place.kind}/${place.name}`;
      case 'transit':
        return `transit/${place.carrier}/${place.number}`;
      default:
        return place.at;
    }
  };
  return key(a) === key(b);
}

const refused = (refusal: string, facts: Record<string, unknown>): MoveDecision => ({
  ok: false,
  refusal: { ...facts, refused: refusal },
});

/**
 * Decides one move. A part is moved only from the place it is in (rule 1); a shop part goes into an owner's machine
 * only on trial, lent or sold (rule 2); the first of two who want a loaner has it (rule 7); a slot holds one part.
 * Refusals name who has it, what sits there and since when; nothing changes.
 */
export function decideMove(view: MoveView, move: Move, at: EpochMs, by: string): MoveDecision {
  const { part } = view;
  if (!part) return refused('no-such-part', { part: move.part });
  if (!samePlace(part.place, move.from)) {
    return refused('part-not-there', {
      part: part.id,
      tag: part.tag,
      name: part.name,
      said: move.from,
      is: part.place,
      since: part.since,
      movedBy: part.movedBy,
    });
  }
  if (part.place.at === 'gone')
    return refused('part-gone', { part: part.id, tag: part.tag, name: part.name, why: part.place.why });
  if (part.reservedFor && part.reservedFor !== move.job) {
    return refused('part-reserved', {
      part: part.id,
      tag: part.tag,
      name: part.name,
      heldBy: part.reservedFor,
      since: part.since,
    });
  }
  const target = slotOf(move.to);
  const title = titleIn(view, part, move);
  if (title && 'refused' in title) return { ok: false, refusal: title };
  if (target) {
    const problem = slotProblem(view.machine(target.machine), target.slot, part);
    if (problem) return { ok: false, refusal: problem };
  }
  const source = slotOf(move.from);
  const entries: (PartEntry | MachineEntry)[] = [
    {
      stream: `part:${part.id}`,
      kind: 'part-moved',
      v: 1,
      body: { from: part.place, to: move.to, job: move.job, why: move.why, title, at, by },
    },
  ];
  if (source)
    entries.push({
      stream: `machine:${source.machine}`,
      kind: 'slot-emptied',
      v: 1,
      body: { slot: source.slot, part: part.id },
    });
  if (target)
    entries.push({
      stream: `machine:${target.machine}`,
      kind: 'slot-filled',
      v: 1,
      body: { slot: target.slot, part: part.id, belongs: settles(move.why) },
    });
  return { ok: true, entries };
}

/** Does the part belong in its new slot from now on, rather than sit there for a trial? */
const settles = (why: MoveReason): boolean => why.by === 'wrong-slot-put-right' || why.by === 'board-has-only-these';

function slotProblem(machine: Machine | null, slot: string, part: Part): Refusal | null {
  if (!machine) return { refused: 'no-such-machine', slot };
  const found = machine.slots.find((one) => one.id === slot);
  if (!found) return { refused: 'no-such-slot', slot, machine: machine.called };
  if (!takesKind(found.takes, part.kind))
    return {
      refused: 'wrong-kind-for-slot',
      slot,
      takes: found.takes,
      part: part.id,
      name: part.name,
      kind: part.kind,
    };
  const sitting = machine.inside[slot];
  if (sitting) return { refused: 'slot-occupied', slot, machine: machine.called, by: sitting };
  return null;
}

function titleIn(view: MoveView, part: Part, move: Move): Title | Refusal {
  if (move.to.at !== 'slot' || part.belongs.to !== 'shop') return null;
  const machine = view.machine(move.to.machine);
  if (!machine || machine.owner === null) return null;
  if (!move.job) return { refused: 'shop-part-needs-job', part: part.id, tag: part.tag };
  if (view.agreedFor) return null;
  if (view.lentUntil !== null) return { as: 'lent', job: move.job, returnBy: view.lentUntil };
  if (part.title?.as === 'lent') return part.title;
  if (!view.trialAllowed)
    return { refused: 'no-word-for-trial-parts', part: part.id, tag: part.tag, needs: 'own-parts-in' };
  return { as: 'on-trial', job: move.job };
}
