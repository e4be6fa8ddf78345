import type { Part } from '../../custody/ledger.ts';
import type { Place } from '../../custody/place.ts';
import type { PartKind } from '../../custody/part.ts';
import type { Asking, Refusal } from '../../decision.ts';
import type { PartId } from '../../ids.ts';
import type { Book } from '../book.ts';
import { moveFromWhereItIs } from './moveOut.ts';
import type { StepRules } from './tracingDoor.ts';

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

type Setting = { readonly book: Book; readonly asking: Asking; readonly rules: StepRules; readonly use: StepUse; readonly run: string; readonly tray: string };

const why = (at: Setting) => ({ by: 'step' as const, step: at.rules.id, run: at.run });

/** The owner's parts of these kinds that are inside now. */
export function ownPartsInside(book: Book, kinds: readonly PartKind[]): readonly Part[] {
  const { machine, parts } = book.view();
  if (!machine) return [];
  return Object.values(machine.inside)
    .map((id) => parts.get(id))
    .filter((part): part is Part => part !== undefined && part.belongs.to === 'owner' && kinds.some((kind) => kind === part.kind));
}

const handled = (at: Setting): readonly Part[] => {
  const own = at.use.parts.map((id) => at.book.view().parts.get(id)).filter((part) => part !== undefined);
  return own.length > 0 ? own : ownPartsInside(at.book, at.rules.handling.takesOut);
};

const tray = (at: Setting): Place => {
  const job = at.book.view().job;
  if (!job) throw new Error('a step without a job');
  return { at: 'tray', tray: at.tray, job: job.id };
};

/** Before the trial: the owner's parts come out, the loaner goes into the first slot it shall try. */
export function movesAtStart(at: Setting): Refusal | null {
  const slotsLeft: string[] = [];
  for (const part of handled(at)) {
    if (part.place.at !== 'slot') continue;
    slotsLeft.push(part.place.slot);
    const refusal = moveFromWhereItIs(at.book, part.id, tray(at), why(at), at.asking);
    if (refusal) return refusal;
  }
  const { loaner } = at.use;
  const machine = at.book.view().machine;
  if (!loaner || !machine) return null;
  const kind = at.book.view().parts.get(loaner)?.kind;
  const free = machine.slots.filter((slot) => slot.takes === kind && !machine.inside[slot.id]).map((slot) => slot.id);
  const slot = at.use.slots[0] ?? slotsLeft.find((one) => free.includes(one)) ?? free[0];
  if (slot === undefined) return null;
  return moveFromWhereItIs(at.book, loaner, { at: 'slot', machine: machine.id, slot }, why(at), at.asking);
}

/** After the trial: the loaner through its other slots and home again, the owner's parts back where the record says. */
export function movesAtFinish(at: Setting, home: Place | null, from: readonly { readonly part: PartId; readonly slot: string }[], endsWith: EndsWith): Refusal | null {
  const machine = at.book.view().machine;
  if (!machine) return null;
  const into = (slot: string): Place => ({ at: 'slot', machine: machine.id, slot });
  const { loaner } = at.use;
  if (loaner && at.book.view().parts.get(loaner)?.place.at === 'slot') {
    for (const slot of at.use.slots.slice(1)) {
      const refusal = moveFromWhereItIs(at.book, loaner, into(slot), why(at), at.asking);
      if (refusal) return refusal;
    }
    if (endsWith !== 'loaner-inside' && home) {
      const refusal = moveFromWhereItIs(at.book, loaner, home, why(at), at.asking);
      if (refusal) return refusal;
    }
  }
  if (endsWith !== 'as-before') return null;
  for (const { part, slot } of from) {
    if (at.book.view().parts.get(part)?.place.at !== 'tray' || at.book.view().machine?.inside[slot]) continue;
    const refusal = moveFromWhereItIs(at.book, part, into(slot), why(at), at.asking);
    if (refusal) return refusal;
  }
  return null;
}
