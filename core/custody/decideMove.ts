import type { Refusal } from '../decision.ts';
import type { JobId, MachineId, PartId } from '../ids.ts';
import type { EpochMs } from '../time.ts';
import type { MoveReason, Part, PartEntry, Title } from './ledger.ts';
import type { Machine, MachineEntry } from './machine.ts';
import { assemblyProblem, heldFor, notThere, slotProblem } from './moveRefusals.ts';
import { agreesWith, needsWord, type OwnersWord } from './ownersWord.ts';
import { type Place, samePlace, slotOf } from './place.ts';

/** One move of one part, as asked. */
export type Move = {
  readonly part: PartId;
  readonly from: Place;
  readonly to: Place;
  readonly job: JobId | null;
  readonly why: MoveReason;
  /** The day a lent part comes back; only for a move that lends. */
  readonly returnBy?: EpochMs;
};

/** What the decision looks at: the part, the machines whose slots it leaves or fills, the word on trial parts. */
export type MoveView = {
  readonly part: Part | null;
  readonly machine: (id: MachineId | string) => Machine | null;
  /** Another part: what it is to move with, or what sits in the slot. */
  readonly other: (id: PartId) => Part | null;
  /** May shop parts go into this job's machine for trial? */
  readonly trialAllowed: boolean;
  /** Has the owner's answer to an offer sold or given this part? */
  readonly agreedFor: boolean;
  /** The owner's word for this part; null where there is no job that could hold one. */
  readonly word: OwnersWord | null;
};

export type MoveDecision =
  | { readonly ok: true; readonly entries: readonly (PartEntry | MachineEntry)[] }
  | { readonly ok: false; readonly refusal: Refusal };

/**
 * Decides one move. A part is moved only from the place it is in (rule 1); a shop part goes into an owner's machine
 * only on trial, lent or sold (rule 2); an owner's part goes into the slot recorded for it unless the move says why not
 * (rule 4), and out of the house only by the owner's word for it; what was moved is righted only by a move that says so
 * (rule 6); the first of two who want a loaner has it (rule 7); a slot holds one part or assembly. Refusals name who has
 * it, what sits there and since when; nothing changes.
 */
export function decideMove(view: MoveView, move: Move, at: EpochMs, by: string): MoveDecision {
  const { part } = view;
  if (!part) return { ok: false, refusal: { refused: 'no-such-part', part: move.part } };
  const titled = titleIn(view, part, move);
  const refusal =
    fromProblem(part, move) ??
    (titled.ok ? null : titled.refusal) ??
    wordProblem(view, part, move) ??
    targetProblem(view, part, move);
  if (refusal) return { ok: false, refusal };
  const title = titled.ok ? titled.title : null;
  const to: Place =
    move.to.at === 'not-found' ? { at: 'not-found', since: at, lastSeen: lastSeen(part.place) } : move.to;
  const body = { from: part.place, to, job: move.job, why: move.why, title, at, by };
  return {
    ok: true,
    entries: [{ stream: `part:${part.id}`, kind: 'part-moved', v: 1, body }, ...otherSides(part, move)],
  };
}

/** What the machine, rig or part at either end writes down of a move. */
function otherSides(part: Part, move: Move): readonly (PartEntry | MachineEntry)[] {
  const [source, target] = [slotOf(move.from), slotOf(move.to)];
  const sides: (PartEntry | MachineEntry)[] = [];
  const write = (entry: PartEntry | MachineEntry) => void sides.push(entry);
  if (source)
    write({
      stream: `machine:${source.machine}`,
      kind: 'slot-emptied',
      v: 1,
      body: { slot: source.slot, part: part.id },
    });
  if (move.from.at === 'with')
    write({ stream: `part:${move.from.part}`, kind: 'rider-left', v: 1, body: { part: part.id } });
  if (target) {
    const body = { slot: target.slot, part: part.id, belongs: settles(move.why) };
    write({ stream: `machine:${target.machine}`, kind: 'slot-filled', v: 1, body });
  }
  if (move.to.at === 'with')
    write({ stream: `part:${move.to.part}`, kind: 'rider-joined', v: 1, body: { part: part.id } });
  return sides;
}

/** Does the part belong in its new slot from now on, rather than sit there for a trial? */
const settles = (why: MoveReason): boolean => why.by === 'wrong-slot-put-right' || why.by === 'board-has-only-these';

/** Where it was last seen, short enough to be read aloud. */
function lastSeen(place: Place): string {
  switch (place.at) {
    case 'slot':
    case 'rig':
      return place.slot;
    case 'bench':
      return place.bench;
    case 'tray':
      return place.tray;
    case 'bin':
      return place.bin;
    case 'kept':
      return place.shelf;
    case 'away':
      return place.name;
    case 'transit':
      return `${place.carrier} ${place.number}`;
    default:
      return place.at;
  }
}

function fromProblem(part: Part, move: Move): Refusal | null {
  if (!samePlace(part.place, move.from)) return notThere(part, move.from);
  const righting = move.why.by === 'righting' && move.why.says !== '';
  if (move.why.by === 'righting' && !righting) return { refused: 'righting-says-nothing', part: part.id };
  if (part.place.at === 'gone' && !righting)
    return {
      refused: 'part-gone',
      part: part.id,
      tag: part.tag,
      name: part.name,
      why: part.place.why,
      since: part.since,
    };
  if (JSON.stringify(part.place) === JSON.stringify(move.to))
    return { refused: 'part-there-already', part: part.id, name: part.name, is: part.place, since: part.since };
  if (part.reservedFor && part.reservedFor !== move.job) return heldFor(part);
  return null;
}

function wordProblem({ word }: MoveView, part: Part, move: Move): Refusal | null {
  if (part.belongs.to !== 'owner' || !word || !needsWord(move.to)) return null;
  if (agreesWith(move.to, word, part.dataBearing)) return null;
  return {
    refused: 'no-word-for-part',
    part: part.id,
    tag: part.tag,
    name: part.name,
    to: move.to,
    answer: word.answer,
    dataBearing: part.dataBearing,
  };
}

function targetProblem(view: MoveView, part: Part, move: Move): Refusal | null {
  if (move.to.at === 'with') return assemblyProblem(part, view.other(move.to.part)) ?? apart(view, part, move.to.part);
  const target = slotOf(move.to);
  if (!target) return null;
  const machine = view.machine(target.machine);
  const inside = machine?.inside[target.slot];
  return (
    slotProblem(machine, target.slot, part, inside ? view.other(inside) : null) ??
    ownSlotProblem(machine, target.slot, part, move)
  );
}

/** Parts are joined where both lie: in one place, or one drawn out of the other's machine. */
function apart(view: MoveView, part: Part, id: PartId): Refusal | null {
  const carrier = view.other(id);
  if (!carrier) return null;
  const [a, b] = [slotOf(part.place), slotOf(carrier.place)];
  const together = samePlace(part.place, carrier.place) || (a !== null && b !== null && a.machine === b.machine);
  if (together) return null;
  return {
    refused: 'parts-lie-apart',
    part: part.id,
    name: part.name,
    carrier: carrier.name,
    is: part.place,
    carrierIs: carrier.place,
    since: carrier.since,
  };
}

const SAYS_WHY: readonly MoveReason['by'][] = [
  'step',
  'proof',
  'wrong-slot-put-right',
  'board-has-only-these',
  'righting',
];

function ownSlotProblem(machine: Machine | null, slot: string, part: Part, { why }: Move): Refusal | null {
  if (machine?.owner === null || part.belongs.to !== 'owner' || SAYS_WHY.includes(why.by)) return null;
  const recorded = Object.entries(machine?.belongsIn ?? {}).find(([, id]) => id === part.id)?.[0];
  if (recorded === undefined || recorded === slot) return null;
  return { refused: 'not-its-own-slot', part: part.id, name: part.name, recorded, slot };
}

type Titled = { readonly ok: true; readonly title: Title } | { readonly ok: false; readonly refusal: Refusal };

function titleIn(view: MoveView, part: Part, move: Move): Titled {
  const titled = (title: Title): Titled => ({ ok: true, title });
  const not = (refused: string, facts = {}): Titled => ({
    ok: false,
    refusal: { refused, part: part.id, tag: part.tag, name: part.name, ...facts },
  });
  if (part.belongs.to !== 'shop') return titled(null);
  const lent = lentIn(part, move);
  if (move.to.at === 'with-owner') return lent ? titled(lent) : not('shop-part-not-lent');
  if (move.to.at !== 'slot' || view.agreedFor) return titled(null);
  const machine = view.machine(move.to.machine);
  if (!machine || machine.owner === null) return titled(null);
  if (!move.job) return not('shop-part-needs-job');
  if (lent) return titled(lent);
  return view.trialAllowed
    ? titled({ as: 'on-trial', job: move.job })
    : not('no-word-for-trial-parts', { needs: 'own-parts-in' });
}

/** Lent by this move, or still lent from before. */
function lentIn(part: Part, { returnBy, job }: Move): Title {
  if (returnBy !== undefined && job) return { as: 'lent', job, returnBy };
  return part.title?.as === 'lent' ? part.title : null;
}
