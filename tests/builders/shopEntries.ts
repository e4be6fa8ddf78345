import type { Tag } from '../../core/custody/part.ts';
import type { Place } from '../../core/custody/place.ts';
import type { MachineId, OwnerId } from '../../core/ids.ts';
import type { Draft } from '../../core/journal/entry.ts';
import { personal } from '../../core/journal/personal.ts';
import { draft } from './shopFolder.ts';
import { takenInBody } from './takenInBody.ts';

/** Entries as the shop's rules write them, with only what a test is about. */

export const inSlot = (machine: string, slot: string): Place => ({ at: 'slot', machine: machine as never, slot });
export const inBin = (bin: string): Place => ({ at: 'bin', bin });
export const onBench = (bench: string): Place => ({ at: 'bench', bench, job: null });

export const partKnown = (
  part: string,
  place: Place,
  over: { readonly tag?: string | null; readonly serial?: string; readonly owner?: string } = {},
): Draft =>
  draft(`part:${part}`, 'part-known', {
    id: part,
    tag: over.tag ?? null,
    kind: 'dimm',
    name: 'a module',
    belongs: { to: 'shop' },
    attributes: {},
    standing: { is: 'unproved', why: 'bought' },
    place,
    serial: over.serial === undefined ? null : personal('readings', over.owner ?? 'o1', over.serial),
    source: 'by-hand',
    dataBearing: false,
    at: 0,
    by: 'staff-1',
  });

export const partMoved = (part: string, from: Place, to: Place): Draft =>
  draft(`part:${part}`, 'part-moved', { from, to, job: null, why: { by: 'hand' }, title: null, at: 0, by: 'staff-1' });

export const partTagged = (part: string, tag: string | null): Draft => draft(`part:${part}`, 'part-tagged', { tag });

export const slotFilled = (machine: string, slot: string, part: string): Draft =>
  draft(`machine:${machine}`, 'slot-filled', { slot, part, belongs: true });
export const slotEmptied = (machine: string, slot: string, part: string): Draft =>
  draft(`machine:${machine}`, 'slot-emptied', { slot, part });

export const machineKnown = (
  machine: string,
  over: { readonly tag?: string | null; readonly serial?: string; readonly owner?: string } = {},
): Draft =>
  draft(`machine:${machine}`, 'machine-known', {
    id: machine,
    owner: over.owner ?? 'o1',
    tag: over.tag ?? null,
    called: 'a tower',
    serial: over.serial === undefined ? null : personal('readings', over.owner ?? 'o1', over.serial),
  });

export const ownerKnown = (
  owner: string,
  reach: { readonly phone: string | null; readonly mail: string | null },
): Draft =>
  draft(`owner:${owner}`, 'owner-known', {
    id: owner,
    name: personal('contact', owner, 'Wilhelmina Quux'),
    reach: personal('contact', owner, { ...reach, first: 'phone' }),
    address: null,
    language: 'en',
    kind: { is: 'person' },
    mayCollect: personal('contact', owner, []),
  });

/** An owner told anew, under whatever keys there are then. */
export const ownerChanged = (
  owner: string,
  reach: { readonly phone: string | null; readonly mail: string | null },
): Draft =>
  draft(`owner:${owner}`, 'owner-changed', {
    name: personal('contact', owner, 'Wilhelmina Quux'),
    reach: personal('contact', owner, { ...reach, first: 'phone' }),
  });

/** A job whose machine could not be made to fail. */
export const looked = (stream: `job:${string}`, says = 'dark'): Draft =>
  draft(stream, 'could-not-be-reproduced', { says });

export const takenIn = (job: string, { owner = 'o1', machine = 'm1' } = {}): Draft =>
  draft(
    `job:${job}`,
    'taken-in',
    takenInBody(
      { owner: owner as OwnerId, machine: machine as MachineId, tag: 'K7R4TMX' as Tag },
      { ownWords: 'It stays dark.', symptoms: ['dark'] },
    ),
  );

export const stageEntered = (job: string, stage: string): Draft =>
  draft(`job:${job}`, 'stage-entered', { stage, why: 'step' });

export const paperIssued = (
  kind: string,
  year: number,
  number: string,
  over: { readonly supersedes?: string; readonly of?: string } = {},
): Draft =>
  draft(`paper:${kind}:${year}`, 'paper-issued', {
    number,
    kind,
    job: null,
    language: 'en',
    issued: 0,
    content: personal('record', over.of ?? 'o1', ['a page']),
    contentHash: '0'.repeat(64),
    supersedes: over.supersedes ?? null,
  });

export const noted = (stream: `job:${string}`, says: string, of = 'o1'): Draft =>
  draft(stream, 'noted', { says: personal('contact', of, says), foundByTheWay: false });

export const partNamed = (part: string, name: string): Draft => draft(`part:${part}`, 'part-corrected', { name });

/** A signature as the pad gives it. */
export const signedBy = (of: string, name: string) => ({
  name: personal('signature', of, name),
  drawn: personal('signature', of, { width: 2, height: 1, strokes: [[[0, 0, 0]]] }),
  typed: false,
  at: 0,
  contentHash: '0'.repeat(64),
});
