import { z } from 'zod';
import { approversOf } from '../../approval/mayAnswer.ts';
import type { Approver, OwnerBody, OwnerKind } from '../../approval/owner.ts';
import type { Tag } from '../../custody/part.ts';
import { issueTag } from '../../custody/tag.ts';
import type { View } from '../../entries/view.ts';
import { jobId, type MachineId, machineId, type OwnerId, ownerId } from '../../ids.ts';
import { CAME_BACK_FOR } from '../../job/entries.ts';
import { charges } from '../../job/money/charges.ts';
import { committedMinor } from '../../job/money/withinWord.ts';
import { type Personal, personal } from '../../journal/personal.ts';
import type { Refusal } from '../../refusal.ts';
import type { Asking } from '../kernel/asking.ts';
import { type About, shopCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { refuse } from '../kernel/decision.ts';
import {
  zEnquiryId,
  zEpoch,
  zId,
  zJobId,
  zLine,
  zMachineId,
  zMinor,
  zOwnerId,
  zTag,
  zText,
  zThing,
} from '../kernel/fields.ts';
import { openUnitOfWork, type UnitOfWork } from '../kernel/unitOfWork.ts';

export const zOwner = z.strictObject({
  name: zLine,
  phone: zLine.nullable(),
  mail: zLine.nullable(),
  first: z.enum(['phone', 'mail']),
  address: zText.nullable(),
  language: z.string().regex(/^[a-z]{2}$/),
  kind: z.discriminatedUnion('is', [
    z.strictObject({ is: z.literal('person') }),
    z.strictObject({ is: z.literal('minor'), guardian: zLine }),
    z.strictObject({
      is: z.literal('company'),
      orderNumber: zLine.nullable(),
      approves: zLine.nullable(),
      approvesUpToMinor: zMinor.nullable(),
      alsoApprove: z
        .array(z.strictObject({ name: zLine, upToMinor: zMinor.nullable() }))
        .max(10)
        .optional(),
    }),
    z.strictObject({ is: z.literal('for-someone-else'), machineOf: zLine }),
  ]),
  mayCollect: z.array(zLine).max(10),
});

const zTold = z.strictObject({
  ownWords: zText,
  symptoms: z.array(zId).min(1).max(12),
  changed: z.array(z.strictObject({ id: zId, since: zLine.nullable(), what: zText.nullable() })).max(12),
  often: z.array(zId).max(4),
  onlyWhen: z.array(zId).max(6),
  sinceDays: z.int().min(0).max(20_000).nullable(),
  lastWorked: zLine.nullable(),
});

export const zTakeIn = z.strictObject({
  owner: z.union([
    z.strictObject({ known: zOwnerId }),
    /** `id`: under which photographs of the sheet were sealed before the owner was known. */
    z.strictObject({ fresh: zOwner, id: zOwnerId.exactOptional() }),
  ]),
  machine: z.union([
    /** `tag`: what it gets where it has none. */
    z.strictObject({ known: zMachineId, tag: zTag.exactOptional() }),
    z.strictObject({ fresh: z.strictObject({ called: zLine, tag: zTag.nullable(), serial: zLine.nullable() }) }),
  ]),
  enquiry: zEnquiryId.nullable(),
  cameBack: z.strictObject({ from: zJobId, same: z.enum(CAME_BACK_FOR) }).nullable(),
  tasks: z
    .array(z.strictObject({ id: zId, fixedMinor: zMinor.nullable() }))
    .min(1)
    .max(20)
    .nullable(),
  charging: z.enum(['charged', 'free', 'diagnosis-only']),
  told: zTold,
  cameAlong: z.array(zThing).max(30),
  lift: z.enum(['one', 'two']),
  limitMinor: zMinor,
  worthMinor: zMinor.nullable().optional(),
  smallPartsUpToMinor: zMinor,
  deadline: zEpoch.nullable(),
  substitution: z.strictObject({ used: z.boolean(), lesser: z.enum(['no', 'ask']) }),
  recording: z.boolean(),
});
export type TakeInInput = z.infer<typeof zTakeIn>;

/**
 * Takes a machine in: the first tier, before the owner leaves. Knows a returning owner and machine, links a job that
 * came back to the older one (a same-fault return strikes the old confirmation out), and gives the machine its tag.
 */
export const takeIn = shopCommand('take-in', zTakeIn, aboutTakeIn, decideTakeIn);

/** What taking in looks at: who and what is known already, the enquiry and the older job it comes from, its tag. */
export function aboutTakeIn(input: Pick<TakeInInput, 'owner' | 'machine' | 'enquiry' | 'cameBack'>): About {
  return {
    owner: 'known' in input.owner ? input.owner.known : input.owner.id,
    machine: 'known' in input.machine ? input.machine.known : undefined,
    here: 'known' in input.machine ? input.machine.known : undefined,
    enquiry: input.enquiry ?? undefined,
    olderJob: input.cameBack?.from,
    tags: [tagIn(input.machine)].filter((tag) => tag !== null),
  };
}

function decideTakeIn(view: View, input: TakeInInput, asking: Asking): Decision {
  const { settings } = view.shop;
  if (!settings) return refuse('shop-not-set-up');
  if ('known' in input.owner && !view.owner) return refuse('no-such-owner', { owner: input.owner.known });
  if ('fresh' in input.owner && view.owner) return refuse('owner-known-already', { owner: view.owner.id });
  if ('known' in input.machine && !view.machine) return refuse('no-such-machine', { machine: input.machine.known });
  if (view.here) return refuse('machine-is-here', { job: view.here.id, tag: view.here.tag, at: view.here.takenInAt });
  const approver = limitAboveApprovers(view, input);
  if (approver) return { ok: false, refusal: approver };
  if (input.cameBack && view.olderJob?.stage !== 'gone-home')
    return refuse('older-job-not-ended', { job: input.cameBack.from });
  if (input.enquiry && view.enquiry?.stage !== 'asked')
    return refuse('enquiry-not-open', { enquiry: input.enquiry, stage: view.enquiry?.stage ?? null });
  const unit = openUnitOfWork(view, asking);
  const job = jobId(asking.newId());
  const owner = 'known' in input.owner ? input.owner.known : (input.owner.id ?? ownerId(asking.newId()));
  const machine = machineFor(view, input, asking);
  const fee = input.cameBack && input.cameBack.same !== 'new' ? 0 : settings.findingFee.minor;
  const terms = {
    currency: settings.currency,
    tax: settings.tax,
    feeCredited: settings.findingFee.credited,
    feeCoversMinutes: settings.findingFee.coversMinutes,
    feeByYes: true as const,
  };
  unit.add(`job:${job}`, 'taken-in', {
    owner,
    machine: machine.id,
    tag: machine.tag,
    tasks: input.tasks,
    charging: input.charging,
    enquiry: input.enquiry,
    cameBackFrom: input.cameBack?.from ?? null,
    told: {
      ...input.told,
      ownWords: personal('record', owner, input.told.ownWords),
      changed: input.told.changed.map((one) => ({
        ...one,
        what: one.what === null ? null : personal('record', owner, one.what),
      })),
    },
    cameAlong: input.cameAlong.map((thing, at) => ({ id: String(at + 1), ...thing })),
    lift: input.lift,
    limitMinor: input.limitMinor,
    ...(input.worthMinor != null && { worthMinor: input.worthMinor }),
    smallPartsUpToMinor: input.smallPartsUpToMinor,
    feeMinor: fee,
    perMinuteMinor: settings.perMinuteMinor,
    terms,
    deadline: input.deadline,
    substitution: input.substitution,
    recording: input.recording,
  });
  const begun = unit.view().job;
  // Before the sheet is signed nothing was said to the fee: the limit has room for it all the same.
  const least = begun ? Math.max(committedMinor(begun), charges(begun, true, fee).totalMinor) : 0;
  if (input.charging !== 'free' && least > input.limitMinor)
    return refuse('limit-below-fee', { limitMinor: input.limitMinor, feeMinor: least });
  if ('fresh' in input.owner) writeOwner(unit, owner, input.owner.fresh);
  writeMachine(unit, view, input, owner, machine);
  for (const part of unit.view().parts.values()) {
    if (part.place.at === 'slot' && part.place.machine === machine.id)
      unit.add(`machine:${machine.id}`, 'part-at-taking-in', { slot: part.place.slot, part: part.id });
  }
  if (input.enquiry) unit.add(`enquiry:${input.enquiry}`, 'enquiry-came', { job });
  if (input.cameBack) {
    unit.add(`job:${input.cameBack.from}`, 'came-back', { as: job, same: input.cameBack.same });
    if (input.cameBack.same === 'same-fault' && view.olderJob?.verdict)
      unit.add(`job:${input.cameBack.from}`, 'verdict-struck', { why: 'came-back', by: job });
  }
  return unit.accept();
}

/**
 * A company's limit is not above what any of its approvers may agree to: whoever brings the machine cannot bind it to more.
 * Refused: `limit-above-approver`, with who approves the most and how much.
 */
function limitAboveApprovers({ owner: known }: View, { owner, limitMinor, charging }: TakeInInput): Refusal | null {
  if (charging === 'free') return null;
  const approvers = 'fresh' in owner ? approversWritten(owner.fresh.kind) : known ? approversOf(known) : [];
  const [most] = approvers.toSorted((a, b) => upTo(b) - upTo(a));
  if (!most || limitMinor <= upTo(most)) return null;
  return { refused: 'limit-above-approver', limitMinor, name: most.name, upToMinor: upTo(most) };
}

const upTo = ({ upToMinor }: Approver): number => upToMinor ?? Number.POSITIVE_INFINITY;

const approversWritten = (kind: z.infer<typeof zOwner>['kind']): readonly Approver[] =>
  kind.is !== 'company'
    ? []
    : [
        ...(kind.approves === null ? [] : [{ name: kind.approves, upToMinor: kind.approvesUpToMinor }]),
        ...(kind.alsoApprove ?? []),
      ];

function writeOwner(unit: UnitOfWork, id: OwnerId, fresh: z.infer<typeof zOwner>): void {
  unit.add(`owner:${id}`, 'owner-known', { id, ...ownerBody(id, fresh) });
}

/** What is written down of an owner, all of theirs sealed under how they are reached. */
export function ownerBody(id: OwnerId, given: z.infer<typeof zOwner>): OwnerBody {
  const contact = <T>(value: T) => personal('contact', id, value);
  return {
    name: contact(given.name),
    reach: contact({ phone: given.phone, mail: given.mail, first: given.first }),
    address: given.address === null ? null : contact(given.address),
    language: given.language,
    kind: kindOfOwner(given.kind, contact),
    mayCollect: contact(given.mayCollect),
  };
}

function kindOfOwner(kind: z.infer<typeof zOwner>['kind'], contact: <T>(value: T) => Personal<T>): OwnerKind {
  switch (kind.is) {
    case 'person':
      return kind;
    case 'minor':
      return { is: 'minor', guardian: contact(kind.guardian) };
    case 'company':
      return {
        is: 'company',
        orderNumber: kind.orderNumber,
        approves: kind.approves === null ? null : contact(kind.approves),
        approvesUpToMinor: kind.approvesUpToMinor,
        ...(kind.alsoApprove && { alsoApprove: contact<readonly Approver[]>(kind.alsoApprove) }),
      };
    case 'for-someone-else':
      return { is: 'for-someone-else', machineOf: contact(kind.machineOf) };
  }
}

/** The tag that was hung on a machine at the counter; null where one is issued, or it has its own. */
export const tagIn = (machine: TakeInInput['machine']): Tag | null =>
  'fresh' in machine ? machine.fresh.tag : (machine.tag ?? null);

type MachineHere = { readonly id: MachineId; readonly tag: Tag };

function machineFor(view: View, input: TakeInInput, asking: Asking): MachineHere {
  return {
    id: view.machine?.id ?? machineId(asking.newId()),
    tag: view.machine?.tag ?? tagIn(input.machine) ?? issueTag(asking.randomInt),
  };
}

function writeMachine(
  unit: UnitOfWork,
  before: View,
  input: TakeInInput,
  owner: OwnerId,
  { id, tag }: MachineHere,
): void {
  if (before.machine) {
    if (!before.machine.tag) unit.add(`machine:${id}`, 'machine-tagged', { tag });
    return;
  }
  const { called, serial } = 'fresh' in input.machine ? input.machine.fresh : { called: '', serial: null };
  unit.add(`machine:${id}`, 'machine-known', {
    id,
    owner,
    tag,
    called,
    serial: serial === null ? null : personal('readings', owner, serial),
  });
}
