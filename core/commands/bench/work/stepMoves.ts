import type { StepRules } from '../../../bench/tracingDoor.ts';
import type { Part } from '../../../custody/ledger.ts';
import { hasNoLead } from '../../../custody/m2.ts';
import type { PartKind } from '../../../custody/part.ts';
import type { Place } from '../../../custody/place.ts';
import type { PartId } from '../../../ids.ts';
import type { Work } from '../../../job/work.ts';
import type { Refusal } from '../../../refusal.ts';
import type { Asking } from '../../kernel/asking.ts';
import type { UnitOfWork } from '../../kernel/unitOfWork.ts';
import { moveFromWhereItIs } from '../parts/moveOut.ts';

/** What the technician said of a step's parts; everything else follows from the step. */
export type StepUse = {
  /** The shop part borrowed, if any. */
  readonly loaner: PartId | null;
  /** Slots gone through in turn, by the loaner or by the owner's own parts; empty: the slot of what came out. */
  readonly slots: readonly string[];
  /** The owner's parts handled; empty: all of the step's kinds that are inside. */
  readonly parts: readonly PartId[];
};

/** How the machine is left after the step. */
export type EndsWith = 'as-before' | 'out' | 'loaner-inside' | 'last-slots';

export type StepMoves = {
  readonly unit: UnitOfWork;
  readonly asking: Asking;
  readonly rules: StepRules;
  readonly use: StepUse;
  readonly run: string;
  readonly tray: string;
};

const byStep = (at: StepMoves) => ({ by: 'step' as const, step: at.rules.id, run: at.run });

/** The owner's parts of these kinds that are inside now. */
export function ownPartsInside(unit: UnitOfWork, kinds: readonly PartKind[]): readonly Part[] {
  const { machine, parts } = unit.view();
  return Object.values(machine?.inside ?? {})
    .map((id) => parts.get(id))
    .filter(
      (part): part is Part =>
        part !== undefined && part.belongs.to === 'owner' && kinds.some((kind) => kind === part.kind),
    );
}

/** The owner's parts that this step takes out, with their slots: kept with the work, so that they find back. */
export function takenOut({ unit, rules, use }: StepMoves): Work['took'] {
  const named = use.parts.map((id) => unit.view().parts.get(id)).filter((part) => part !== undefined);
  const parts = named.length > 0 ? named : ownPartsInside(unit, rules.handling.takesOut);
  return parts.flatMap((part) => (part.place.at === 'slot' ? [{ part: part.id, slot: part.place.slot }] : []));
}

type RigPlace = Extract<Place, { readonly at: 'rig' }>;

const inTray = (at: StepMoves): Place => {
  const { job } = at.unit.view();
  if (!job) throw new Error('a step without a job');
  return { at: 'tray', tray: at.tray, job: job.id };
};

const inSlot = (at: StepMoves, slot: string): Place => {
  const { machine } = at.unit.view();
  if (!machine) throw new Error('a step without a machine');
  return { at: 'slot', machine: machine.id, slot };
};

/** Does the step move modules from slot to slot, each going straight to the slot named for it? */
const straight = (at: StepMoves): boolean =>
  at.rules.handling.movesDimms &&
  at.use.loaner === null &&
  at.use.parts.length === at.use.slots.length &&
  at.use.slots.length > 0 &&
  at.rules.handling.takesOut.length === 0;

/**
 * Before the trial: the owner's parts come out, the loaner goes into the first slot it shall try. What is ordered to try
 * is not here yet: theirs stays in until it comes.
 */
export function movesAtStart(at: StepMoves, took: Work['took']): Refusal | null {
  if (straight(at)) return moveStraight(at);
  if (at.rules.handling.orders !== undefined) return null;
  return takeOut(at, took) ?? lendIn(at, took);
}

function takeOut(at: StepMoves, took: Work['took']): Refusal | null {
  for (const { part } of took) {
    const { intoRig } = at.rules.handling;
    const rig =
      intoRig !== undefined && at.unit.view().parts.get(part)?.kind === intoRig ? rigPlace(at, intoRig) : null;
    const cleared = rig && clearRig(at, rig);
    if (cleared) return cleared;
    const refusal = moveFromWhereItIs(at.unit, part, rig ?? inTray(at), byStep(at), at.asking);
    if (refusal) return refusal;
  }
  return null;
}

function lendIn(at: StepMoves, took: Work['took']): Refusal | null {
  const { loaner } = at.use;
  if (!loaner || at.rules.handling.intoSlotOf === undefined) return null;
  const slot =
    at.use.slots[0] ??
    took.find((one) => slotTakes(at, one.slot) === at.rules.handling.intoSlotOf)?.slot ??
    freeSlot(at, at.rules.handling.intoSlotOf);
  if (slot === undefined && !knowsSlot(at, at.rules.handling.intoSlotOf))
    return { refused: 'census-missing', kind: at.rules.handling.intoSlotOf };
  return slot === undefined
    ? { refused: 'no-free-slot', kind: at.rules.handling.intoSlotOf }
    : moveFromWhereItIs(at.unit, loaner, inSlot(at, slot), byStep(at), at.asking);
}

/** After the trial: loaner or module through its other slots, the loaner home, the owner's parts back or left out. */
export function movesAtFinish(at: StepMoves, work: Work, endsWith: EndsWith): Refusal | null {
  const { loaner } = at.use;
  const rounds = roundsLeft(at, work);
  for (const { part, to } of rounds) {
    const refusal = moveFromWhereItIs(at.unit, part, to, byStep(at), at.asking);
    if (refusal) return refusal;
  }
  const lent = loaner ? at.unit.view().parts.get(loaner) : undefined;
  if (lent?.place.at === 'slot' && endsWith !== 'loaner-inside' && lent.home) {
    const refusal = moveFromWhereItIs(at.unit, lent.id, lent.home, byStep(at), at.asking);
    if (refusal) return refusal;
  }
  if (endsWith === 'as-before') return putBack(at, work);
  return at.rules.handling.orders === undefined
    ? null
    : takeOut(
        at,
        work.took.filter((one) => isInside(at, one.part)),
      );
}

function moveStraight(at: StepMoves): Refusal | null {
  for (const [index, part] of at.use.parts.entries()) {
    const slot = at.use.slots[index];
    if (slot === undefined) continue;
    const refusal = moveFromWhereItIs(at.unit, part, inSlot(at, slot), { by: 'wrong-slot-put-right' }, at.asking);
    if (refusal) return refusal;
  }
  return null;
}

/** What is still to be gone through: a loaner's further slots, or the owner's modules one after the other in one slot. */
export function roundsLeft(at: StepMoves, work: Work): readonly { readonly part: PartId; readonly to: Place }[] {
  const { loaner, slots } = at.use;
  if (loaner && at.unit.view().parts.get(loaner)?.place.at === 'slot')
    return slots.slice(1).map((slot) => ({ part: loaner, to: inSlot(at, slot) }));
  const slot = slots[0];
  if (!at.rules.handling.movesDimms || loaner || slot === undefined || straight(at)) return [];
  return work.took.flatMap(({ part }) => [
    { part, to: inSlot(at, slot) },
    { part, to: inTray(at) },
  ]);
}

function putBack(at: StepMoves, work: Work): Refusal | null {
  for (const { part, slot } of work.took) {
    const where = at.unit.view().parts.get(part)?.place.at;
    if (!where || !comesBackFrom(at).includes(where) || at.unit.view().machine?.inside[slot]) continue;
    const refusal = moveFromWhereItIs(at.unit, part, inSlot(at, slot), byStep(at), at.asking);
    if (refusal) return refusal;
  }
  return null;
}

/** Places from which a step puts back what it took out; what it sent out is here again once its outcome is known. */
const comesBackFrom = ({ rules }: StepMoves): readonly Place['at'][] =>
  rules.handling.sends === undefined ? ['tray', 'rig'] : ['tray', 'rig', 'transit', 'away'];

const isInside = (at: StepMoves, part: PartId): boolean => at.unit.view().parts.get(part)?.place.at === 'slot';

const slotTakes = (at: StepMoves, slot: string) => at.unit.view().machine?.slots.find((one) => one.id === slot)?.takes;

/** Is any place of this kind known of the machine? */
const knowsSlot = (at: StepMoves, kind: PartKind): boolean =>
  at.unit.view().machine?.slots.some((slot) => slot.takes === kind) ?? false;

const freeSlot = (at: StepMoves, kind: PartKind): string | undefined => {
  const { machine } = at.unit.view();
  return machine?.slots.find((slot) => slot.takes === kind && !machine.inside[slot.id])?.id;
};

/** The rig's place for a part of this kind; null when there is no rig. */
function rigPlace({ unit }: StepMoves, kind: PartKind): RigPlace | null {
  for (const rig of unit.view().rigs.values()) {
    const slot = rig.slots.find((one) => one.takes === kind);
    if (slot) return { at: 'rig', rig: rig.id, slot: slot.id };
  }
  return null;
}

/** What sits in the rig's place goes to the bench first, or says why it cannot. */
function clearRig(at: StepMoves, place: RigPlace): Refusal | null {
  const { rigs, job } = at.unit.view();
  const rig = rigs.get(place.rig);
  const sitting = rig?.inside[place.slot];
  if (!rig || sitting === undefined) return null;
  const bench: Place = { at: 'bench', bench: rig.called, job: job?.id ?? null };
  return moveFromWhereItIs(at.unit, sitting, bench, byStep(at), at.asking);
}

/** The slots that a step unplugs: of the kinds it says, what is plugged and does not come out for it anyway. */
export function toUnplug(at: StepMoves, took: Work['took']): readonly string[] {
  const { machine, parts } = at.unit.view();
  return (machine?.slots ?? []).flatMap(({ id }) => {
    const inside = machine?.inside[id];
    const part = inside && parts.get(inside);
    if (!part || part.id === at.use.loaner || machine.unplugged.includes(id)) return [];
    if (took.some((one) => one.part === part.id)) return [];
    return at.rules.handling.unplugs.some((kind) => kind === part.kind) ? [id] : [];
  });
}

/** Leads come off these slots in place; a drive without a lead comes out to the tray. */
export function unplugsAtStart(at: StepMoves, off: readonly string[]): Refusal | null {
  const { machine } = at.unit.view();
  if (!machine || off.length === 0) return null;
  at.unit.add(`machine:${machine.id}`, 'unplugged', { slots: off });
  for (const slot of machine.slots.filter((one) => off.includes(one.id) && hasNoLead(one))) {
    const part = machine.inside[slot.id];
    const refusal = part && moveFromWhereItIs(at.unit, part, inTray(at), { by: 'hand' }, at.asking);
    if (refusal) return refusal;
  }
  return null;
}
