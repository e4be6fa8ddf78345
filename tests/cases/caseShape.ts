import { z } from 'zod';

const id = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'an id in small letters and hyphens');
const logged = z.string().regex(/^[a-z0-9-]+:[a-z0-9-]+$/, 'step:outcome');
const sentence = z.string().regex(/\S \S/, 'a sentence');
const minutes = z.number().positive();
const money = z.number().int().nonnegative();
const some = <T extends z.ZodType>(shape: T) => z.array(shape).min(1);
const oneOrSome = <T extends z.ZodType>(shape: T) => z.union([shape, some(shape)]);

const machine = z.strictObject({
  card: z.boolean().optional(),
  dimms: z.number().int().nonnegative().optional(),
  slots: z.number().int().nonnegative().optional(),
  drives: z.number().int().nonnegative().optional(),
  graphicsInProcessor: z.boolean().optional(),
  riser: z.boolean().optional(),
  addIns: z.boolean().optional(),
  modularSupply: z.boolean().optional(),
  firmwareRescue: z.boolean().optional(),
  encrypted: z.enum(['yes', 'no', 'unknown']).optional(),
  keyInHand: z.boolean().optional(),
  wideCooler: z.boolean().optional(),
  cardCovers: z.boolean().optional(),
  glass: z.boolean().optional(),
  smallCase: z.boolean().optional(),
  solderedMemory: z.boolean().optional(),
  solderedProcessor: z.boolean().optional(),
  ownMakeSupply: z.boolean().optional(),
  brick: z.boolean().optional(),
  liquidCooler: z.enum(['closed', 'open-loop']).optional(),
  kind: z.enum(['tower', 'small', 'tiny', 'all-in-one', 'gaming', 'home-built', 'workstation']).optional(),
  age: z.number().nonnegative().optional(),
  newPart: id.optional(),
  codes: z.enum(['none', 'lights', 'digits', 'speaker']).optional(),
  array: z.number().int().min(2).optional(),
  supplyWatts: minutes.optional(),
  needsWatts: minutes.optional(),
  battery: z.boolean().optional(),
});

const fault = z.union([id, z.strictObject({ new: sentence, like: id.optional() })]);

/**
 * What each step shows: an outcome, or outcomes in the order asked. `mended`: what mends, each alone or a list all
 * together. `afterwards`: what a step shows once the machine is mended.
 */
const answers = z.preprocess(
  (written) => {
    if (typeof written !== 'object' || written === null) return written;
    const { mended, afterwards, ...steps }: { readonly [step: string]: unknown } = { ...written };
    return { mended, afterwards, steps };
  },
  z.strictObject({
    mended: z.array(oneOrSome(z.string())).optional(),
    afterwards: z.record(id, z.string()).optional(),
    steps: z.record(id, oneOrSome(id)),
  }),
);

const until = z.union([z.literal('ever'), some(z.union([z.string(), some(z.string())]))]);

const never = z.strictObject({
  what: oneOrSome(z.string()),
  from: some(logged).optional(),
  until,
  held: z.literal(true).optional(),
  harm: z.enum(['machine', 'data', 'ours', 'word']).optional(),
  why: sentence,
});

export const VERDICTS = ['confirmed', 'named', 'cured', 'not-reproduced', 'ask-owner', 'hand-over'] as const;
export const MENDS = ['reseating', 'setting', 'cleaning', 'software', 'part', 'outside', 'advice'] as const;
export const REASONS = ['nothing-at-risk', 'tells-nothing', 'no-step-left'] as const;

const words = z.union([
  sentence,
  z.strictObject({ caution: z.string().min(1), at: z.string() }),
  z.strictObject({ not: z.enum(REASONS), at: z.string().optional() }),
  z.strictObject({ ask: z.string().min(1) }),
]);

/** One bench case as its author writes it, read strictly: a field that the form does not know is a mistake. */
export const zBenchCase = z.strictObject({
  id,
  title: sentence,
  about: sentence,
  told: z.strictObject({
    symptoms: some(id),
    changed: some(id).optional(),
    often: some(id).optional(),
    onlyWhen: some(id).optional(),
    rate: z
      .strictObject({ perStart: z.number().min(0).max(1).optional(), perHour: z.number().positive().optional() })
      .optional(),
  }),
  seen: z.array(id),
  firstStart: id,
  machine: machine.optional(),
  wall: z
    .union([
      z.literal('full'),
      z.strictObject({ lacks: some(z.string()).optional(), dead: some(z.string()).optional() }),
    ])
    .optional(),
  agreed: some(id).optional(),
  money: z.strictObject({ limit: money.optional(), worth: money.optional() }).optional(),
  before: some(logged).optional(),
  truth: z.strictObject({ faults: some(fault), comesAndGoes: z.boolean() }),
  answers,
  never: some(never).optional(),
  askedFirst: some(
    z.strictObject({ after: z.array(logged), oneOf: some(id), within: z.number().int().positive().optional() }),
  ).optional(),
  firstThought: some(
    z
      .strictObject({
        after: z.array(logged),
        oneOf: some(id).optional(),
        notAbove: z.record(id, z.number().gt(0).lt(1)).optional(),
      })
      .refine((one) => one.oneOf !== undefined || one.notAbove !== undefined, 'oneOf, notAbove or both'),
  ).optional(),
  words: some(words).optional(),
  end: z.strictObject({
    verdict: oneOrSome(z.enum(VERDICTS)),
    part: oneOrSome(id).optional(),
    also: id.optional(),
    mend: some(z.enum(MENDS)).optional(),
    fault: oneOrSome(id).optional(),
    after: some(z.union([z.string(), some(z.string())])).optional(),
    notSaid: some(z.string()).optional(),
  }),
  master: z.strictObject({ steps: some(z.string().min(3)), minutes }),
  disputed: some(sentence).optional(),
  source: z.literal('common practice, no source'),
});

export type BenchCase = z.infer<typeof zBenchCase>;
