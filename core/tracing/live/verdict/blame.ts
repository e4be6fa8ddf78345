import { at, nth } from '../../../figures/rows.ts';
import { massOf, type Posterior } from '../belief/posterior.ts';
import { FIRST, OURS, placeOf, SECOND } from '../belief/presence.ts';
import { faultNumber, NOTHING_WRONG } from '../model/special.ts';
import type { Fault, FaultModel } from '../types.ts';

/** What may be blamed and is no part: nothing of it can be called a faulty part. */
const NO_PART: readonly Fault['part'][] = [
  'mains',
  'plugs',
  'settings',
  'software',
  'outside',
  'contact',
  'home',
  'none',
  'ours',
];

/** Is it a part that can be called faulty? */
export const isPart = (part: Fault['part']): boolean => !NO_PART.includes(part);

/** What stands outside the machine: found there, nothing of the machine is at fault. */
export const isOutside = (part: Fault['part']): boolean => part === 'mains' || part === 'outside' || part === 'home';

/** Is the tracing over where this was found: a part to replace, or what stands outside? All else is put right first. */
export const endsWhenFound = ({ part, mendedBy }: Fault): boolean => mendedBy === 'part' || isOutside(part);

/**
 * A fault of the model.
 * @throws {RangeError} for an id that it does not have: a defect.
 */
export function faultOf(model: FaultModel, id: string): Fault {
  return nth(model.faults, faultNumber(model, id));
}

/** Chance after the log that at least one of these faults is there, or was there and has been mended. */
export function shareOf(model: FaultModel, posterior: Posterior, among: (fault: Fault) => boolean): number {
  const counts = model.faults.map(among);
  return posterior.hypotheses.reduce(
    (sum, { first, second }, h) =>
      counts[first] || (second >= 0 && counts[second]) ? sum + massOf(posterior, h) : sum,
    0,
  );
}

/** Chance that something was wrong and nothing of it is left in the machine: mended, or standing outside it. */
export function goneOf(model: FaultModel, { hypotheses, mass }: Posterior): number {
  const nothing = faultNumber(model, NOTHING_WRONG);
  const outside = model.faults.map(({ part }) => isOutside(part));
  const gone = (fault: number, isThere: boolean) => !isThere || outside[fault] === true;
  let sum = 0;
  hypotheses.forEach(({ first, second }, h) => {
    if (first === nothing) return;
    // Of what we made ourselves nothing may be left either.
    for (let state = 0; state < OURS; state++)
      if (gone(first, (state & FIRST) !== 0) && (second < 0 || gone(second, (state & SECOND) !== 0)))
        sum += at(mass, placeOf(h, state));
  });
  return sum;
}

export type Blame = {
  readonly part: Fault['part'];
  /** The likeliest of its faults. */
  readonly fault: string;
  /** Chance that some fault of this part, among those asked about, is or was there; and any fault of the part at all. */
  readonly share: number;
  readonly ofPart: number;
};

/** Which part carries the blame among these faults: the one with the greatest chance. Null when none of them is possible. */
export function blameAmong(model: FaultModel, posterior: Posterior, among: (fault: Fault) => boolean): Blame | null {
  const parts = new Set(model.faults.filter(among).map((fault) => fault.part));
  let best: Blame | null = null;
  for (const part of parts) {
    const share = shareOf(model, posterior, (fault) => fault.part === part && among(fault));
    if (share <= (best?.share ?? 0)) continue;
    const likeliest = model.faults
      .filter((fault) => fault.part === part && among(fault))
      .map((fault) => ({ id: fault.id, p: shareOf(model, posterior, (one) => one.id === fault.id) }))
      .toSorted((a, b) => b.p - a.p)[0];
    if (!likeliest) continue;
    const ofPart = shareOf(model, posterior, (fault) => fault.part === part);
    best = { part, fault: likeliest.id, share, ofPart };
  }
  return best;
}
