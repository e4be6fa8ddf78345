import type { JobId } from '../../ids.ts';
import type { Refusal } from '../../refusal.ts';
import type { Part } from '../ledger.ts';
import { type Place, samePlace, slotOf } from '../place.ts';
import type { Move, MoveView } from './move.ts';
import { heldFor, notThere, partOut } from './moveRefusals.ts';

/**
 * Why a part does not leave the place it is in by this move; null when it may. It has to be there, be this job's or
 * nobody's, and what is gone comes back only by a move that says what it rights.
 */
export function leavingProblem(view: MoveView, part: Part, move: Move): Refusal | null {
  if (!samePlace(part.place, move.from)) return notThere(part, move.from);
  const righting = move.why.by === 'righting';
  if (move.why.by === 'righting' && move.why.says === '') return { refused: 'righting-says-nothing', part: part.id };
  const whole = wholeOf(view, part);
  if (whole.place.at === 'gone' && !righting)
    return {
      refused: 'part-gone',
      part: part.id,
      tag: part.tag,
      name: part.name,
      why: whole.place.why,
      since: whole.since,
      movedBy: whole.movedBy,
    };
  if (sameToTheLetter(part.place, move.to))
    return { refused: 'part-there-already', part: part.id, name: part.name, is: part.place, since: part.since };
  return heldProblem(view, part, whole, move);
}

/** A part not found stays so since the first time it was missed. */
const sameToTheLetter = (a: Place, b: Place) =>
  JSON.stringify(a) === JSON.stringify(b) || (a.at === 'not-found' && b.at === 'not-found');

/** The part that a rider moves with, or the part itself. */
const wholeOf = ({ other }: MoveView, part: Part): Part =>
  part.place.at === 'with' ? (other(part.place.part) ?? part) : part;

function heldProblem(view: MoveView, part: Part, whole: Part, { job }: Move): Refusal | null {
  for (const one of [part, ...part.riders.flatMap((id) => view.other(id) ?? [])])
    if (one.reservedFor && one.reservedFor !== job) return heldFor(one);
  if (part.belongs.to === 'owner' && view.owner !== null && part.belongs.owner !== view.owner)
    return {
      refused: 'not-this-jobs-part',
      part: part.id,
      tag: part.tag,
      name: part.name,
      is: whole.place,
      since: whole.since,
    };
  const has = jobThatHas(whole);
  const tidied = job === null && whole.title === null;
  if (part.belongs.to === 'shop' && has !== null && has !== job && !tidied) return partOut(part, has, whole);
  const source = slotOf(whole.place);
  return source && !view.machine(source.machine)
    ? {
        refused: 'in-another-machine',
        part: part.id,
        tag: part.tag,
        name: part.name,
        is: whole.place,
        since: whole.since,
      }
    : null;
}

/** The job that has a shop part now: it is on trial there, or lies in that job's tray or on its bench. */
function jobThatHas({ title, place }: Part): JobId | null {
  if (title?.as === 'on-trial') return title.job;
  return place.at === 'tray' || place.at === 'bench' ? place.job : null;
}
