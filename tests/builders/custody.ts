import { applyPart, type Part } from '../../core/custody/ledger.ts';
import { applyMachine, type Machine } from '../../core/custody/machine.ts';
import type { Move, MoveView } from '../../core/custody/move/move.ts';
import type { Place } from '../../core/custody/place.ts';
import type { JobId, MachineId, OwnerId, PartId } from '../../core/ids.ts';
import { epochMs } from '../../core/time.ts';

export const NOON = epochMs(1_790_000_000_000);
export const DAY = 86_400_000;
export const JOB = 'job-1' as JobId;
export const OWNER = 'owner-1' as OwnerId;
export const MACHINE = 'machine-1' as MachineId;

/** The tower on the bench: two memory slots, one for a card, one for a supply; nothing inside until it is said. */
export function aMachine(says: Partial<Machine> = {}): Machine {
  const slots = (['dimm', 'dimm', 'card', 'supply'] as const).map((takes, at) => ({
    id: ['A1', 'A2', 'x16', 'supply'][at] ?? takes,
    takes,
    order: at + 1,
    source: 'by-hand' as const,
  }));
  const known = applyMachine(null, {
    stream: `machine:${MACHINE}`,
    kind: 'machine-known',
    body: { id: MACHINE, owner: OWNER, tag: null, called: 'grey tower', serial: null },
  });
  if (!known) throw new Error('a machine is known by its first entry');
  return { ...known, slots, ...says };
}

/** A module of the owner's in A1, known since noon, until it is said otherwise. */
export function aPart(says: Partial<Part> = {}): Part {
  const part = applyPart(null, {
    stream: 'part:module',
    kind: 'part-known',
    at: NOON,
    by: 'kim',
    body: {
      id: 'module' as PartId,
      tag: null,
      kind: 'dimm',
      name: 'module',
      belongs: { to: 'owner', owner: OWNER },
      attributes: {},
      standing: { is: 'suspect' },
      place: inSlot('A1'),
      serial: null,
      source: 'census',
      dataBearing: false,
      at: NOON,
      by: 'kim',
    },
  });
  if (!part) throw new Error('a part is known by its first entry');
  return { ...part, ...says };
}

/** The shop's own module from bin 3, known-good. */
export const ours = (says: Partial<Part> = {}): Part =>
  aPart({
    id: 'ours' as PartId,
    name: 'loaner module',
    belongs: { to: 'shop' },
    standing: { is: 'trial-grade', scopes: ['starts'] },
    place: BIN,
    home: BIN,
    ...says,
  });

export const BIN: Place = { at: 'bin', bin: '3' };
export const TRAY: Place = { at: 'tray', tray: '1', job: JOB };
export const inSlot = (slot: string): Place => ({ at: 'slot', machine: MACHINE, slot });

/** What a move is decided on: the job's own machine, the owner's leave for trials, and these parts. */
export const moveView = (part: Part | null, says: Partial<MoveView> = {}, others: readonly Part[] = []): MoveView => ({
  part,
  machine: (id) => (id === MACHINE ? aMachine() : null),
  other: (id) => others.find((one) => one.id === id) ?? null,
  trialAllowed: true,
  owner: OWNER,
  agreedFor: false,
  word: { answer: 'back', destroy: false, outAndBack: false },
  ...says,
});

export const aMove = (part: Part, to: Place, says: Partial<Move> = {}): Move => ({
  part: part.id,
  from: part.place,
  to,
  job: JOB,
  why: { by: 'step', step: 'dimm-loan', run: 'run-1' },
  ...says,
});
