import { isM2Module } from '../custody/m2.ts';
import type { PartFacts, ProofStatus, Scope, ThingKind } from '../custody/part.ts';
import type { JobId } from '../ids.ts';
import type { EpochMs } from '../time.ts';
import { fits } from './fits.ts';
import type { MachineView } from './machineView.ts';
import { type Fit, weighed } from './reason.ts';
import { listOf } from './values.ts';
import { fitsBySlot } from './whichSlot.ts';

/** What a swap is to answer: a good part of this kind in that slot, or in any it goes into, proved at least as far as `scope`. */
export type LoanerQuestion = {
  readonly kind: ThingKind;
  readonly slot: string | null;
  readonly scope: Scope;
  /** Kinds of the machine's own parts under suspicion now. */
  readonly suspects: readonly ThingKind[];
  readonly job: JobId;
  readonly at: EpochMs;
};

/** A part of the shop's stock as the ledger has it now. */
export type StockPart = {
  readonly part: PartFacts;
  /** On its bin or rig and not out in somebody's machine. */
  readonly in: boolean;
  readonly reservedFor: JobId | null;
  /** What it would cost to replace, in minor units; `null` when nobody said. */
  readonly worthMinor: number | null;
};

type LeftOut = 'not-shops' | 'does-not-fit' | 'standing-proves-nothing' | 'lapsed' | 'not-proved-that-far';
type Loaner = {
  readonly stock: StockPart;
  readonly fit: Fit;
  readonly free: boolean;
  readonly needsOfSupply: boolean;
};
export type Loaners = {
  readonly offered: readonly Loaner[];
  readonly leftOut: readonly { readonly stock: StockPart; readonly why: LeftOut; readonly fit: Fit | null }[];
};

/**
 * Which shop parts fit and would answer the question. In order: free ones before those out or reserved; those that fit
 * before those of which it is not known; where the supply is suspect, those that need no lead of it; then the least
 * valuable (trial-grade before known-good, then the cheaper). A part whose standing proves nothing is left out, with why.
 */
export function loaners(question: LoanerQuestion, machine: MachineView, stock: readonly StockPart[]): Loaners {
  const offered: Loaner[] = [];
  const leftOut: Loaners['leftOut'][number][] = [];
  for (const one of stock.filter(({ part }) => part.kind === question.kind)) {
    const why = one.part.belongs.to === 'shop' ? standingFails(one.part.standing, question) : 'not-shops';
    const fit = why ? null : fitOf(one.part, question.slot, machine);
    if (why || !fit || fit.fits === 'no') leftOut.push({ stock: one, why: why ?? 'does-not-fit', fit });
    else offered.push({ stock: one, fit, free: isFree(one, question.job), needsOfSupply: needsOfSupply(one.part) });
  }
  const supplySuspect = question.suspects.includes('supply');
  const rank = ({ free, fit, needsOfSupply: needs, stock: { part, worthMinor } }: Loaner): readonly number[] => [
    free ? 0 : 1,
    fit.fits === 'yes' ? 0 : 1,
    supplySuspect && needs ? 1 : 0,
    part.standing.is === 'trial-grade' ? 0 : 1,
    worthMinor ?? Number.POSITIVE_INFINITY,
  ];
  return {
    offered: offered.toSorted((a, b) => byRank(rank(a), rank(b)) || (a.stock.part.id < b.stock.part.id ? -1 : 1)),
    leftOut,
  };
}

const fitOf = (part: PartFacts, slot: string | null, machine: MachineView): Fit =>
  slot === null ? (fitsBySlot(part, machine)[0]?.fit ?? weighed([])) : fits(part, slot, machine);

function byRank(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at < 0 ? 0 : (a[at] ?? 0) < (b[at] ?? 0) ? -1 : 1;
}

const isFree = (one: StockPart, job: JobId) => one.in && (one.reservedFor === null || one.reservedFor === job);

/** Only a part known to work answers anything: an exposed, unproved, suspect or dead one says nothing about the machine. */
function standingFails(standing: ProofStatus, { scope, at }: LoanerQuestion): LeftOut | null {
  switch (standing.is) {
    case 'trial-grade':
      return reaches(standing.scopes, scope) ? null : 'not-proved-that-far';
    case 'known-good':
      if (standing.lapses !== null && standing.lapses <= at) return 'lapsed';
      return reaches(standing.evidence.scopes, scope) ? null : 'not-proved-that-far';
    default:
      return 'standing-proves-nothing';
  }
}

/** What ran under load, or in both channels, also starts. */
const reaches = (scopes: readonly Scope[], asked: Scope) =>
  scopes.includes(asked) || (asked === 'starts' && scopes.length > 0);

/** Whether a part hangs on a lead of the machine's supply beyond what the board itself takes. */
function needsOfSupply(part: PartFacts): boolean {
  if (part.kind === 'card') return (listOf(part.attributes, 'power-plugs') ?? ['not known']).length > 0;
  if (part.kind === 'drive' || part.kind === 'optical-drive') return !isM2Module(part);
  return part.kind === 'board' || part.kind === 'processor';
}
