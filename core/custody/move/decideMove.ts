import type { Refusal, RefusalName } from '../../refusal.ts';
import type { EpochMs } from '../../time.ts';
import type { MoveReason, Part, PartEntry, Title } from '../ledger.ts';
import type { MachineEntry } from '../machine.ts';
import { type Place, slotOf } from '../place.ts';
import { targetProblem, wordProblem } from './mayEnter.ts';
import { leavingProblem } from './mayLeave.ts';
import type { Move, MoveView } from './move.ts';

export type MoveDecision =
  | { readonly ok: true; readonly entries: readonly (PartEntry | MachineEntry)[] }
  | { readonly ok: false; readonly refusal: Refusal };

/**
 * Decides one move. A part is moved only from the place it is in; a shop part goes into an owner's machine only on
 * trial, lent or sold; an owner's part goes into the slot recorded for it unless the move says why not, and out of the
 * house only by the owner's word for it; what was moved is righted only by a move that says so; the first of two who
 * want a loaner has it; a slot holds one part or assembly. Refusals name who has it, what sits there and since when;
 * nothing changes.
 */
export function decideMove(view: MoveView, move: Move, at: EpochMs, by: string): MoveDecision {
  const { part } = view;
  if (!part) return { ok: false, refusal: { refused: 'no-such-part', part: move.part } };
  const titled = titleIn(view, part, move);
  const refusal =
    leavingProblem(view, part, move) ??
    (titled.ok ? null : titled.refusal) ??
    wordProblem(view, part, move, at) ??
    targetProblem(view, part, move);
  if (refusal) return { ok: false, refusal };
  const title = titled.ok ? titled.title : null;
  const to: Place =
    move.to.at === 'not-found' ? { at: 'not-found', since: at, lastSeen: lastSeen(part.place) } : move.to;
  const body = { from: part.place, to, job: move.job, why: move.why, title, at, by };
  return {
    ok: true,
    entries: [{ stream: `part:${part.id}`, kind: 'part-moved', body }, ...otherSides(view, part, move)],
  };
}

/** What the machine, rig or part at either end writes down of a move. */
function otherSides(view: MoveView, part: Part, move: Move): readonly (PartEntry | MachineEntry)[] {
  const [source, target] = [slotOf(move.from), slotOf(move.to)];
  const sides: (PartEntry | MachineEntry)[] = [];
  const write = (entry: PartEntry | MachineEntry) => void sides.push(entry);
  if (source)
    write({
      stream: `machine:${source.machine}`,
      kind: 'slot-emptied',
      body: { slot: source.slot, part: part.id },
    });
  if (move.from.at === 'with') write({ stream: `part:${move.from.part}`, kind: 'rider-left', body: { part: part.id } });
  if (target) {
    const body = { slot: target.slot, part: part.id, belongs: settles(view, part, move.why) };
    write({ stream: `machine:${target.machine}`, kind: 'slot-filled', body });
  }
  if (move.to.at === 'with') write({ stream: `part:${move.to.part}`, kind: 'rider-joined', body: { part: part.id } });
  return sides;
}

/**
 * Does the part belong in its new slot from now on, rather than sit there for a trial? Ours does once it is sold, theirs
 * once it is fitted there for a reason.
 */
function settles({ agreedFor }: MoveView, part: Part, why: MoveReason): boolean {
  if (part.belongs.to === 'shop') return agreedFor;
  if (why.by === 'fitting') return why.says !== undefined;
  return why.by === 'wrong-slot-put-right' || why.by === 'board-has-only-these';
}

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

type TitleDecision = { readonly ok: true; readonly title: Title } | { readonly ok: false; readonly refusal: Refusal };

function titleIn(view: MoveView, part: Part, move: Move): TitleDecision {
  const titled = (title: Title): TitleDecision => ({ ok: true, title });
  const not = (refused: RefusalName, facts = {}): TitleDecision => ({
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
