import { z } from 'zod';
import { zCaseLine } from './caseLine.ts';

const zIds = z.array(z.string());
/** One is enough; a list inside the list: all of these together. */
const zEither = z.array(z.union([z.string(), zIds]));
const zOneOrMore = z.union([z.string(), zIds]).transform((one) => (typeof one === 'string' ? [one] : one));

const zAnswers = z
  .object({ mended: zEither.optional(), afterwards: z.record(z.string(), zOneOrMore).optional() })
  .catchall(zOneOrMore);

const zNever = z.object({
  what: zOneOrMore,
  from: zIds.default([]),
  until: z.union([z.string(), zEither]).transform((one) => (typeof one === 'string' ? [one] : one)),
  held: z.boolean().default(false),
  harm: z.enum(['machine', 'data', 'ours', 'word']).optional(),
  why: z.string(),
});
const zAskedFirst = z.object({ after: zIds, oneOf: zIds.min(1), within: z.number().int().positive().default(1) });
const zFirstThought = z.object({
  after: zIds,
  oneOf: zIds.optional(),
  notAbove: z.record(z.string(), z.number().min(0).max(1)).optional(),
});
const zSaid = z.union([
  z.string(),
  z.strictObject({ caution: z.string(), at: z.string() }),
  z.strictObject({ not: z.string(), at: z.string().optional() }),
  z.strictObject({ ask: z.string() }),
]);

export const VERDICTS = ['confirmed', 'named', 'cured', 'not-reproduced', 'ask-owner', 'hand-over'] as const;
export type VerdictKind = (typeof VERDICTS)[number];
const zVerdict = z.enum(VERDICTS);

const zEnd = z.object({
  verdict: z.union([zVerdict, z.array(zVerdict).min(1)]).transform((one) => (typeof one === 'string' ? [one] : one)),
  part: zOneOrMore.optional(),
  also: z.string().optional(),
  mend: zOneOrMore.optional(),
  fault: zOneOrMore.default([]),
  after: zEither.default([]),
  notSaid: zIds.default([]),
});

const zTruth = z.object({
  faults: z.array(z.union([z.string(), z.strictObject({ new: z.string(), like: z.string().optional() })])).min(1),
  comesAndGoes: z.boolean().default(false),
});

/** One machine as it stands on the bench, with what is wrong, what each step would show and how it should end. */
export const zBenchCase = zCaseLine.extend({
  title: z.string(),
  about: z.string(),
  firstStart: z.string(),
  truth: zTruth,
  answers: zAnswers.default({}),
  never: z.array(zNever).default([]),
  askedFirst: z.array(zAskedFirst).default([]),
  firstThought: z.array(zFirstThought).default([]),
  words: z.array(zSaid).default([]),
  end: zEnd,
  master: z.object({ steps: z.array(z.string()), minutes: z.number().positive() }),
  disputed: z.array(z.string()).default([]),
  source: z.string().optional(),
});
export type BenchCase = z.infer<typeof zBenchCase>;
export type Never = z.infer<typeof zNever>;
export type Either = z.infer<typeof zEither>;
