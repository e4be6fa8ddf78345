import { fromWall } from '../../../core/calendar.ts';
import type { TakeInInput } from '../../../core/commands/intake/takeIn.ts';
import type { EpochMs } from '../../../core/time.ts';
import { type BeforeInput, type BeforeSheet, namesOf, type OwnerSheet, type TakingInSheet } from './sheet.ts';

const lineOf = (text: string): string | null => (text.trim() === '' ? null : text.trim());

export const momentOf = (wall: string, zone: string): EpochMs | null => (wall === '' ? null : fromWall(wall, zone));

/** What is taken in, a limit that was not said yet left open. */
export type TakenAsSaid = Omit<TakeInInput, 'limitMinor'> & { readonly limitMinor: number | null };

/** The command's input from the sheet as written. What was left open goes in as open, never as a guess. */
export function takeInInput(sheet: TakingInSheet, language: string, zone: string): TakenAsSaid {
  return {
    owner: ownerInput(sheet, language),
    machine:
      sheet.machine.known !== null
        ? { known: sheet.machine.known, tag: sheet.tag }
        : {
            fresh: {
              called: sheet.machine.called.trim(),
              tag: sheet.tag,
              serial: lineOf(sheet.machine.serial),
            },
          },
    enquiry: sheet.enquiry,
    cameBack: sheet.cameBack ? { from: sheet.cameBack.from, same: sheet.cameBack.same ?? 'new' } : null,
    tasks: sheet.tasks && sheet.tasks.length > 0 ? [...sheet.tasks] : null,
    charging: sheet.charging,
    told: {
      ownWords: sheet.ownWords.trim(),
      symptoms: sheet.symptoms.length > 0 ? [...sheet.symptoms] : ['cannot-say'],
      changed: sheet.changed.map(({ id, since, what }) => ({ id, since: lineOf(since), what: lineOf(what) })),
      often: [...sheet.often],
      onlyWhen: [...sheet.onlyWhen],
      sinceDays: sheet.sinceDays,
      lastWorked: lineOf(sheet.lastWorked),
    },
    cameAlong: [...sheet.cameAlong],
    lift: sheet.lift ?? 'one',
    limitMinor: sheet.limitMinor,
    worthMinor: sheet.worthMinor ?? null,
    smallPartsUpToMinor: sheet.smallPartsUpToMinor ?? 0,
    deadline: momentOf(sheet.deadline, zone),
    substitution: { used: sheet.used === 'yes', lesser: sheet.lesser === 'yes' ? 'ask' : 'no' },
    recording: sheet.answers.film === 'yes',
  };
}

function ownerInput({ owner, ownerId }: TakingInSheet, language: string): TakeInInput['owner'] {
  if (owner.known !== null) return { known: owner.known };
  return { fresh: freshOwner(owner, language), id: ownerId };
}

type FreshOwner = Extract<TakeInInput['owner'], { readonly fresh: unknown }>['fresh'];

/** An owner as a command takes them, from the fields they are written in. */
export const freshOwner = (owner: OwnerSheet, language: string): FreshOwner => ({
  name: owner.name.trim(),
  phone: lineOf(owner.phone),
  mail: lineOf(owner.mail),
  first: owner.phone.trim() === '' ? 'mail' : 'phone',
  address: lineOf(owner.address),
  language,
  kind: kindInput(owner),
  mayCollect: [...namesOf(owner.mayCollect)],
});

function kindInput(owner: OwnerSheet): FreshOwner['kind'] {
  switch (owner.kind) {
    case 'person':
      return { is: 'person' };
    case 'minor':
      return { is: 'minor', guardian: owner.guardian.trim() };
    case 'company':
      return {
        is: 'company',
        orderNumber: lineOf(owner.orderNumber),
        approves: lineOf(owner.approves),
        approvesUpToMinor: owner.approvesUpToMinor,
        alsoApprove: (owner.alsoApprove ?? [])
          .filter((one) => one.name.trim() !== '')
          .map(({ name, upToMinor }) => ({ name: name.trim(), upToMinor })),
      };
    case 'for-someone-else':
      return { is: 'for-someone-else', machineOf: owner.machineOf.trim() };
  }
}

/** The second tier as the command takes it; what was not asked is not known. */
export const beforeInput = (before: BeforeSheet): BeforeInput => ({
  encryption: before.encryption ?? 'unknown',
  keyInHand: before.keyInHand === true,
  keyPlace: lineOf(before.keyPlace),
  backup: before.backup ?? 'unknown',
  bought: lineOf(before.bought),
  from: lineOf(before.from),
  makersWarranty: before.makersWarranty ?? 'unknown',
  seals: before.seals ?? 'unknown',
});
