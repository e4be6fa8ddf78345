import { z } from 'zod';

const zIds = z.array(z.string());
const zRate = z.object({ perStart: z.number().min(0).max(1), perHour: z.number().min(0) });

export const zTold = z.object({
  symptoms: zIds.min(1),
  changed: zIds.default([]),
  often: zIds.default(['every-time']),
  onlyWhen: zIds.default([]),
  rate: zRate.nullable().default(null),
});
export const zWall = z.union([z.literal('full'), z.object({ lacks: zIds.default([]), dead: zIds.default([]) })]);
export const zMoney = z.object({
  limit: z.number().min(0).nullable().optional(),
  worth: z.number().min(0).nullable().optional(),
});
export const zMachine = z.record(z.string(), z.unknown());

/** What of a case the engine is shown: see the bench cases' protocol. Nothing of truth, answers or judging is in it. */
export const zCaseLine = z.object({
  id: z.string(),
  told: zTold,
  seen: zIds.default([]),
  machine: zMachine.default({}),
  wall: zWall.default('full'),
  agreed: zIds.optional(),
  money: zMoney.default({}),
  before: z.array(z.string().regex(/^[^:]+:[^:]+(:(back|stays))?$/)).default([]),
});
export type CaseLine = z.infer<typeof zCaseLine>;

/** Fields of a case file that no answer may depend on: known, and not read. */
export const NOT_READ = [
  'title',
  'about',
  'firstStart',
  'truth',
  'answers',
  'never',
  'askedFirst',
  'firstThought',
  'words',
  'end',
  'master',
  'disputed',
  'source',
] as const;
