import { z } from 'zod';
import { CONSENT_ANSWERS, CONSENTS } from '../approval/consent.ts';
import { answerHowShape, answerShape, questionShape, tryShape } from '../approval/question.ts';
import { signatureShape } from '../approval/signature.ts';
import { tagShape } from '../custody/part.ts';
import { enquiryIdShape, jobIdShape, machineIdShape, ownerIdShape, partIdShape, questionIdShape } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import { personalShape } from '../journal/personal.ts';
import { currencyShape } from '../money/money.ts';
import { taxTermsShape } from '../money/taxTerms.ts';
import type { BodiesOf, Shaped } from '../shape.ts';
import { STAGES } from '../stage.ts';
import { epochMsShape, minutesShape } from '../time.ts';
import { ONE_OF } from '../tracing/live/model/fault.ts';
import { coreShape } from './agreedLine.ts';
import { CONFIRMED_BY } from './confirmedBy.ts';
import { estimateShape } from './estimate.ts';
import { MISHAPS } from './home/mishaps.ts';
import { HOW_TOLD } from './howTold.ts';
import { ORDER_BODIES } from './orders/orderEntries.ts';
import { beforeFirstScrewShape, cameAlongShape, thingShape, toldShape } from './told.ts';
import { triedArrangementShape } from './triedArrangement.ts';
import { forgottenShape, readingShape, tookShape, turnShape, usedLoanerShape, WORK_KINDS } from './work.ts';

/** How the job is paid: charged, free of charge, or finding the fault only. */
const CHARGING = ['charged', 'free', 'diagnosis-only'] as const;

/** What a job is charged by, as the shop had it when the machine was taken in. */
const jobTermsShape = z.strictObject({
  currency: currencyShape,
  tax: taxTermsShape,
  /** The finding fee is inside the price of a repair; else it comes on top, and covers so many minutes of tracing. */
  feeCredited: z.boolean(),
  feeCoversMinutes: z.number(),
  /** The finding fee is owed only by the owner's yes to it, and once looking began; jobs from before owe it without. */
  feeByYes: z.literal(true).optional(),
});

/** What is put on the bill, or taken off it, without a question of its own. */
const bookedShape = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('small-part'), what: z.string(), priceMinor: z.number() }),
  z.strictObject({ is: z.literal('given'), what: z.string(), worthMinor: z.number() }),
  z.strictObject({ is: z.literal('discount'), why: z.string(), minor: z.number() }),
  z.strictObject({ is: z.literal('storage'), days: z.number(), minor: z.number() }),
]);
export type Booked = Shaped<typeof bookedShape>;

/** Money taken from the owner, before or at hand-over, or given back to them: then `minor` is below zero. */
const paymentShape = z.strictObject({
  minor: z.number(),
  how: z.enum(['cash', 'card', 'transfer']),
  for: z.enum(['deposit', 'bill', 'back']),
});
export type Payment = Shaped<typeof paymentShape>;

/** What may be otherwise than it came when a machine is handed over. */
export const DIFFERENCES = [
  'settings-cleared',
  'tie-cut',
  'died-here',
  'hours-more',
  'plugs-out-and-in',
  'other',
] as const;
/** Is it known how an incident came about, and how a part is after it? */
export const INCIDENT_CAUSES = ['known', 'unknown'] as const;
export const PART_AFTER_INCIDENT = ['hurt', 'dead', 'lost'] as const;
/** For what a machine came back: the same fault, another one, or one that we made. */
export const CAME_BACK_FOR = ['same-fault', 'new', 'ours'] as const;

const takenInShape = z.strictObject({
  owner: ownerIdShape,
  machine: machineIdShape,
  tag: tagShape,
  /** Known work has its task list at once; tracing can be opened later. */
  tasks: z.array(z.strictObject({ id: z.string(), fixedMinor: z.number().nullable() })).nullable(),
  charging: z.enum(CHARGING),
  enquiry: enquiryIdShape.nullable(),
  cameBackFrom: jobIdShape.nullable(),
  told: toldShape,
  cameAlong: z.array(cameAlongShape),
  lift: z.enum(['one', 'two']),
  limitMinor: z.number(),
  /** What the machine is worth to its owner, working; null or left out: not known. */
  worthMinor: z.number().nullable().optional(),
  smallPartsUpToMinor: z.number(),
  feeMinor: z.number(),
  perMinuteMinor: z.number(),
  /** The shop's terms of that day: what the owner agreed to stays, whatever the shop changes later. */
  terms: jobTermsShape.optional(),
  deadline: epochMsShape.nullable(),
  substitution: z.strictObject({ used: z.boolean(), lesser: z.enum(['no', 'ask']) }),
  recording: z.boolean(),
});
export type TakenIn = Shaped<typeof takenInShape>;
/** By what it works again, where no part is to blame; a sweep is several small things at once. */
export const CURES = ['reseating', 'cleaning', 'setting', 'software', 'outside', 'advice', 'sweep'] as const;

/** Which of several it is, as the machine says or as it is printed there; null: left open, and said to be. */
const whichShape = z.strictObject({ of: z.enum(ONE_OF), id: z.string().nullable() });
export type WhichOfSeveral = Shaped<typeof whichShape>;
/** It stays as it is, as the owner was told: why. */
const leftSoShape = z.strictObject({ says: personalShape(z.string()) });

/** Why a verdict may be written: confirmed in one of three ways, or less than that. */
const verdictShape = z.discriminatedUnion('is', [
  z.strictObject({
    is: z.literal('named'),
    fault: z.string(),
    part: partIdShape.nullable(),
    /** The part is likely at fault, the way in which it failed is not believed enough to be said. */
    wayOpen: z.literal(true).optional(),
    /** A technician named it, whatever the log shows: why. By whom: who wrote the entry. */
    byHand: z.strictObject({ why: personalShape(z.string()) }).optional(),
    which: whichShape.optional(),
    leftSo: leftSoShape.optional(),
  }),
  z.strictObject({
    is: z.literal('confirmed'),
    fault: z.string(),
    part: partIdShape,
    /** The part is at fault, the way in which it failed is not believed enough to be said. */
    wayOpen: z.literal(true).optional(),
    which: whichShape.optional(),
    leftSo: leftSoShape.optional(),
    way: z.enum(CONFIRMED_BY),
    evidence: z.array(z.string()),
    readings: z.array(readingShape),
  }),
  z.strictObject({
    is: z.literal('cured'),
    by: z.enum(CURES),
    fault: z.string().nullable(),
    /** Where it came and went: hours watched since, and the chance that it would have kept away all that time. */
    watched: z.strictObject({ hours: z.number(), hiddenChance: z.number() }).optional(),
  }),
  z.strictObject({
    is: z.literal('not-reproduced'),
    watchedHours: z.number(),
    hiddenChance: z.number().nullable(),
    left: z.array(z.string()),
  }),
  z.strictObject({ is: z.literal('given-up'), left: z.array(z.string()) }),
]);
export type JobVerdict = Shaped<typeof verdictShape>;

const thoughtShape = z.strictObject({
  fault: z.string().nullable(),
  engine: z.strictObject({ fault: z.string(), p: z.number() }).nullable(),
});
export type Thought = Shaped<typeof thoughtShape>;

const differenceShape = z.strictObject({
  what: z.enum(DIFFERENCES),
  says: personalShape(z.string()).nullable(),
});

const incidentShape = z.strictObject({
  id: z.string(),
  what: personalShape(z.string()),
  part: partIdShape.nullable(),
  cause: z.enum(INCIDENT_CAUSES),
  /** When it happened, where that is not when it was written down. */
  happenedAt: epochMsShape.optional(),
  how: z.enum(MISHAPS).optional(),
  partIs: z.enum(PART_AFTER_INCIDENT).optional(),
  photographs: z.array(z.string()),
  /** The shop's own cost on this job; never on the bill. */
  costMinor: z.number(),
});
export type Incident = Shaped<typeof incidentShape>;

/** A data carrier that was destroyed for good. */
const destroyedShape = z.strictObject({
  part: partIdShape,
  medium: z.strictObject({ maker: z.string(), model: z.string(), type: z.string() }),
  serial: personalShape(z.string()),
  technique: z.string(),
  tool: z.string(),
  /** How it was looked over. */
  checked: z.string(),
  /** Did the check find no error? Absent in entries from before it was asked. */
  withoutErrors: z.boolean().optional(),
  verifiedBy: z.string(),
  certificate: z.string(),
});
export type Destroyed = Shaped<typeof destroyedShape>;

const leftLikeThisShape = z.strictObject({
  open: z.array(z.string()),
  unplugged: z.array(z.string()),
  lying: z.array(z.strictObject({ what: z.string(), where: z.string() })),
  doNotPower: z.string().nullable(),
});
export type LeftLikeThis = Shaped<typeof leftLikeThisShape>;

const handoverShape = z.strictObject({
  collectedBy: personalShape(z.string()),
  signature: signatureShape,
  returned: z.array(thingShape),
  asItCame: z.boolean(),
  differences: z.array(differenceShape),
});
export type Handover = Shaped<typeof handoverShape>;

/** What of an owner can be put right while a machine of theirs is here. */
export const OWNER_FACTS = ['name', 'reach', 'address', 'language', 'kind', 'mayCollect'] as const;
export type OwnerFact = (typeof OWNER_FACTS)[number];

const workAskedShape = z.strictObject({
  run: z.string(),
  kind: z.enum(WORK_KINDS),
  what: z.string(),
  startedAt: epochMsShape,
  loaners: z.array(usedLoanerShape),
  took: tookShape,
});

export const JOB_BODIES = {
  'taken-in': takenInShape,
  'sheet-signed': z.strictObject({
    answers: z.record(z.string(), z.enum(CONSENT_ANSWERS)),
    signature: signatureShape,
  }),
  'consent-signed-alone': z.strictObject({
    id: z.enum(CONSENTS),
    answer: z.enum(CONSENT_ANSWERS),
    signature: signatureShape,
    about: z.string().nullable(),
  }),
  'consent-answered': z.strictObject({
    id: z.enum(CONSENTS),
    answer: z.enum(CONSENT_ANSWERS),
    how: answerHowShape,
    name: personalShape(z.string()),
  }),
  'consent-withdrawn': z.strictObject({ id: z.enum(CONSENTS) }),
  'asked-before-first-screw': beforeFirstScrewShape,
  'thing-found': cameAlongShape.extend({ where: z.string() }),
  'ours-on': thingShape,
  'ours-off': thingShape,
  photographed: z.strictObject({ of: z.string(), blob: z.string() }),
  'secret-sealed': z.strictObject({ id: z.string(), what: z.string(), secret: personalShape(z.string()) }),
  'secret-wiped': z.strictObject({ id: z.string() }),
  /** What the machine is worth to its owner, told later or put right. */
  'worth-told': z.strictObject({ worthMinor: z.number().nullable() }),
  'told-corrected': z.strictObject({ symptoms: z.array(z.string()), often: z.array(z.string()) }),
  seen: z.strictObject({ symptoms: z.array(z.string()), differs: z.boolean() }),
  'could-not-be-reproduced': z.strictObject({ says: z.string() }),
  'stage-entered': z.strictObject({ stage: z.enum(STAGES), why: z.string() }),
  'work-started': workAskedShape.extend({
    /** Why a gate was passed on the technician's own word. */
    ownWord: personalShape(z.string()).optional(),
    /** Slots whose parts are unplugged as it begins. */
    unplugged: z.array(z.string()).optional(),
  }),
  'work-finished': workAskedShape.extend({
    endedAt: epochMsShape,
    outcome: z.string(),
    /** What else was found, of a step that looks at several places in one go. */
    also: z.array(z.string()).optional(),
    handsOn: minutesShape,
    /** Of those, the minutes beyond the owner's word: the shop's own, never charged. */
    ours: minutesShape.optional(),
    waiting: minutesShape,
    /** The clock ran on without anybody: what it ran, and why it was cut. */
    forgotten: forgottenShape.optional(),
    readings: z.array(readingShape),
    passed: z.boolean().nullable(),
    note: personalShape(z.string()).nullable(),
    leftOut: z.array(z.string()),
  }),
  'arrangement-tried': triedArrangementShape,
  'work-turned': turnShape.extend({ run: z.string() }),
  'work-struck': z.strictObject({ run: z.string(), why: z.string() }),
  noted: z.strictObject({ says: personalShape(z.string()), foundByTheWay: z.boolean() }),
  estimated: estimateShape,
  promised: z.strictObject({ at: epochMsShape, p90: epochMsShape, told: z.boolean() }),
  /** The owner was told of the day; `was`: the day they knew before. */
  'promise-told': z.strictObject({ promised: epochMsShape, was: epochMsShape.nullable(), how: z.enum(HOW_TOLD) }),
  'question-put': questionShape,
  'contact-attempted': tryShape.extend({ question: questionIdShape, number: personalShape(z.string()).nullable() }),
  answered: z.strictObject({ question: questionIdShape, answer: answerShape }),
  'question-lapsed': z.strictObject({ question: questionIdShape }),
  'word-withdrawn': z.strictObject({ question: questionIdShape, limitMinor: z.number().optional() }),
  'charge-booked': bookedShape,
  paid: paymentShape,
  /** A payment that was written down wrongly, by its place among them from 1: it stays to be read and counts for nothing. */
  'payment-struck': z.strictObject({ nth: z.number(), why: personalShape(z.string()) }),
  /** The finding fee is not asked for, and why. */
  'fee-waived': z.strictObject({ why: personalShape(z.string()) }),
  /** It went home with so much still owed, and what was said about it. */
  'left-unpaid': z.strictObject({ minor: z.number(), why: personalShape(z.string()) }),
  /** Something that came along cannot be given back, and what became of it. */
  'thing-lost': z.strictObject({ id: z.string(), count: z.number(), says: personalShape(z.string()) }),
  /** It was taken in by mistake: nothing was done, and nothing is owed. */
  'taking-in-cancelled': z.strictObject({ why: personalShape(z.string()) }),
  /** What of the owner was put right in this job, and by whose word, where it takes one. */
  'owner-corrected': z.strictObject({
    what: z.array(z.enum(OWNER_FACTS)),
    saidBy: personalShape(z.string()).nullable(),
    how: z.enum(HOW_TOLD).nullable(),
  }),
  'line-fitted': z.strictObject({ part: partIdShape }),
  judged: verdictShape,
  /** A technician's "I think it is …": null takes it back. `engine`: what was likeliest by the model then. */
  thought: thoughtShape,
  'verdict-struck': z.strictObject({ why: z.enum(['came-back', 'wrong']), by: jobIdShape.nullable() }),
  ...ORDER_BODIES,
  'line-agreed': z.strictObject({
    what: z.string(),
    part: partIdShape.nullable(),
    priceMinor: z.number(),
    warrantyMonths: z.number(),
    question: questionIdShape,
    taxPermille: z.number().optional(),
    core: coreShape.optional(),
  }),
  'part-joined': z.strictObject({ part: partIdShape }),
  incident: incidentShape,
  destroyed: destroyedShape,
  'incident-told': z.strictObject({ id: z.string(), how: answerHowShape, name: personalShape(z.string()) }),
  'left-like-this': leftLikeThisShape,
  'left-confirmed': z.strictObject({}),
  'told-ready': z.strictObject({ how: z.enum(['phone', 'mail', 'message']) }),
  reminded: z.strictObject({ last: z.boolean() }),
  'handed-over': handoverShape,
  'came-back': z.strictObject({ as: jobIdShape, same: z.enum(CAME_BACK_FOR) }),
  'paper-named': z.strictObject({
    kind: z.string(),
    number: z.string(),
    supersedes: z.string().nullable(),
    /** The part it is about, where a job has one of its kind for each part. */
    part: partIdShape.optional(),
  }),
} as const;
export type JobBodies = BodiesOf<typeof JOB_BODIES>;

export type JobEntry = EntryOf<`job:${string}`, JobBodies>;
