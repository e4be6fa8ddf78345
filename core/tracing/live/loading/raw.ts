import { z } from 'zod';
import { EQUIPMENT_KINDS, PART_KINDS } from '../../../custody/part.ts';
import { NEW_PARTS } from '../case.ts';
import { CAUTIONS } from '../cautions.ts';
import { HARMS } from '../gate.ts';
import { GROUPS } from '../groups.ts';
import { SWITCHES } from '../model/assemblyStates.ts';
import { CIRCUITS } from '../model/circuits.ts';
import { MACHINE_FACTS, ONE_OF } from '../model/fault.ts';
import { LIVES, MACHINE_NEEDS, NEEDS, WORDS } from '../model/needs.ts';
import { chance, id, source } from './rawFields.ts';
import { zDeeds, zSafety } from './rawSafety.ts';

/** What the fault model's files hold, as written by hand: compact rules, checked here field by field. */
const minutes = z.number().min(0).max(10_080);
const weight = z.number().min(0).max(1000);
/** More than this many faults or steps are not computed. */
const MOST = 1000;
const partKind = z.enum(PART_KINDS);
const thing = z.enum([...PART_KINDS, ...EQUIPMENT_KINDS]);
const circuit = z.enum(CIRCUITS);
const group = z.enum(GROUPS);
const caution = z.enum(CAUTIONS);
/** Holds for all of a file that has no note of its own. */
const note = source;

const LOANER_STANDINGS = ['trial-grade', 'known-good', 'exposed', 'unproved'] as const;
const standing = z.enum(LOANER_STANDINGS);
const rate = z.strictObject({
  perStart: chance,
  perLoadHour: z.number().min(0),
  perIdleHour: z.number().min(0),
  source,
});
const chances = z.record(id, chance);

const MENDED_BY = ['part', 'reseating', 'setting', 'cleaning', 'software', 'advice'] as const;
const zFaults = z.strictObject({
  note,
  profiles: z.record(z.string(), rate),
  /** Faults that no step tells apart, said openly. */
  inseparable: z.array(z.array(id).min(2)),
  faults: z
    .array(
      z.strictObject({
        id,
        part: z.enum([...PART_KINDS, 'mains', 'settings', 'software', 'outside', 'contact', 'home', 'none', 'ours']),
        circuits: z.array(circuit),
        weights: z.partialRecord(group, weight),
        comesAndGoes: chance,
        atBench: chance.default(1),
        given: z.array(z.strictObject({ is: z.enum(MACHINE_FACTS), times: z.number().min(0), source })).default([]),
        profile: z.string(),
        mendedBy: z.enum(MENDED_BY),
        oneOf: z.enum(ONE_OF).optional(),
        mendMinutes: minutes,
        source,
      }),
    )
    .min(2, 'a fault model needs at least two faults')
    .max(MOST, `more than ${MOST} faults are not computed`),
});

/** Nothing is made impossible by what was told. */
const times = z.number().positive();

const zSymptoms = z.strictObject({
  note,
  confused: z.array(z.strictObject({ told: group, shows: group, weight: chance, source })),
  /** What is seen at the first look although the machine shows something else: now and then it simply works. */
  seenAs: z.array(z.strictObject({ shows: group, seen: group, weight: chance, source })),
  /** Groups that mean "now and then" by themselves, and what they multiply a steady fault by. */
  nowAndThen: z.strictObject({ groups: z.array(group), steady: chance }),
  toldWrong: chance,
  seenWrong: chance,
  floor: weight,
  symptoms: z.array(
    z.strictObject({
      id,
      groups: z.array(group).min(1),
      stop: z.boolean(),
      copyFirst: z.boolean(),
      /** Says what is wanted, not what is wrong. */
      aside: z.boolean().default(false),
      /** What this very term multiplies the weights of its groups by: the faults named, and all others. */
      multiplies: z.record(id, times).default({}),
      others: times.default(1),
      life: z.enum(LIVES).nullable().default(null),
      source: source.optional(),
    }),
  ),
});

const zAdded = z.record(z.enum(NEW_PARTS), chance);
const told = z.strictObject({ perStart: chance, perHour: z.number().min(0) });
const zTold = z.strictObject({
  note,
  /** Which part owners say was added, of all machines and by what is wrong; each sums to one. */
  added: z.strictObject({
    base: zAdded,
    faults: z.array(z.strictObject({ faults: z.array(id).min(1), chance: zAdded })),
    source,
  }),
  /** A technician's own hunch: the fault it names is so many times likelier. Never less than 1: a hunch speaks for, not against. */
  hunch: z
    .strictObject({ times: z.number().min(1).max(100), source })
    .default({ times: 3, source: 'common practice, no source' }),
  evidence: z.array(
    z.strictObject({
      id,
      multiplies: z.record(id, z.number().positive()),
      lookFirst: z.boolean().default(false),
      source,
    }),
  ),
  often: z.array(
    z.strictObject({
      id,
      rate: told.nullable(),
      steady: z.number().min(0),
      comesAndGoes: z.number().min(0),
      multiplies: z.record(id, times).default({}),
      source,
    }),
  ),
});

const zPairs = z.strictObject({
  note,
  kappa: z.number().min(0).max(100),
  kappaSource: source,
  pairs: z.array(
    z.strictObject({ faults: z.tuple([id, id]), weight: chance, told: z.record(id, chance).default({}), source }),
  ),
});

const both = z.tuple([minutes, minutes]);
const zAssembly = z.strictObject({
  note,
  states: z.array(
    z.strictObject({ id, opening: minutes, closing: minutes, within: id.nullable(), ours: chance, source }),
  ),
  switches: z.array(
    z.strictObject({
      id: z.enum(SWITCHES),
      add: z.record(id, both).default({}),
      set: z.record(id, both).default({}),
      within: z.record(id, id).default({}),
      withinSteps: z.record(id, z.array(id)).default({}),
      times: z.number().positive().default(1),
      refuses: z.array(id).default([]),
      noLoaner: z.array(thing).default([]),
      cautions: z.record(id, z.array(caution)).default({}),
      source,
    }),
  ),
});

const zHandlings = z.strictObject({ note, handlings: z.record(id, z.record(id, chance)) });

const MEANS = [
  'works',
  'same',
  'worse',
  'finding',
  'evidence',
  'fails-again',
  'fails-on-rig',
  'works-on-rig',
  'separates',
  'could-not',
] as const;
const STEP_KINDS = [
  'ask',
  'look',
  'measure',
  'setting',
  'reseat',
  'remove',
  'swap',
  'rig',
  'load',
  'sweep',
  'software',
  'clean',
  'back',
  'order',
  'send',
  'recheck',
] as const;
const zStep = z.strictObject({
  id,
  kind: z.enum(STEP_KINDS),
  handsOn: minutes,
  waiting: minutes,
  open: z.array(id),
  closed: z.array(id),
  outcomes: z
    .array(
      z.strictObject({
        id,
        means: z.enum(MEANS),
        of: z.array(id).optional(),
        by: z.enum(MENDED_BY).optional(),
        life: z.enum(LIVES).optional(),
        gives: z.array(z.enum(WORDS)).default([]),
        whileQuiet: z.array(id).default([]),
      }),
    )
    .min(2),
  normal: id,
  /** Of a look at several places at once: where each finding is seen. All but the normal outcome are findings then. */
  places: z
    .array(z.strictObject({ id, findings: z.array(id).min(1) }))
    .max(9)
    .default([]),
  takesOut: z.array(circuit).default([]),
  staysOut: z.boolean().default(false),
  bringsIn: z.array(circuit).default([]),
  onRig: z.array(circuit).nullable().default(null),
  does: z.array(id).default([]),
  alsoDoes: z.array(id).default([]),
  putBackDoes: z.array(id).default([]),
  tells: z.array(z.strictObject({ faults: z.array(id).min(1), chance: chances })).default([]),
  others: chances.optional(),
  nothing: chances.optional(),
  byGroup: z.union([z.literal('watch'), z.record(z.string(), chances)]).optional(),
  exposure: z
    .strictObject({ starts: z.number().min(0), loadHours: z.number().min(0), idleHours: z.number().min(0) })
    .nullable()
    .default(null),
  handling: z.strictObject({
    takesOut: z.array(partKind),
    borrows: thing.nullable(),
    putsBack: z.enum(['same-slot', 'stays-out', 'asked']),
    alsoBorrows: z.array(thing).default([]),
    intoSlotOf: partKind.optional(),
    intoRig: partKind.optional(),
    orders: partKind.optional(),
    sends: partKind.optional(),
    unplugs: z.array(partKind).default([]),
    movesDimms: z.boolean().default(false),
  }),
  needs: z.array(z.enum(NEEDS)),
  life: z.enum(LIVES).default('none'),
  asks: z.array(z.enum(MACHINE_NEEDS)).default([]),
  groups: z.array(group).default([]),
  cautions: z.array(caution),
  repeatable: z.int().min(1).max(3).default(1),
  slip: z.strictObject({ chance, part: partKind }).nullable().default(null),
  confirming: z.boolean().default(false),
  /** Only where it does not follow: a trial, or a look at a machine that runs, starts it anyway. */
  starts: z.literal(true).optional(),
  source,
});

const zSteps = z.strictObject({
  note,
  /** What a trial shows; `nothingBorrowed`: chance that ours, though sound, changes nothing, by its kind. */
  trial: z.strictObject({
    showing: chances,
    nothing: chances,
    nothingBorrowed: z.partialRecord(thing, chance),
    ours: chances,
  }),
  steps: z.array(zStep).min(1, 'a fault model needs steps').max(MOST, `more than ${MOST} steps are not computed`),
});

const came = z.strictObject({ step: id, outcomes: z.array(id).min(1) });
const zDangers = z.strictObject({
  note,
  harm: z.array(
    z.strictObject({
      fault: id,
      part: thing,
      chance,
      /**
       * Whose part: missing = ours that is borrowed; `either` = ours, and the owner's own that is in circuit at a start;
       * `owner` = theirs alone, by these steps.
       */
      whose: z.enum(['owner', 'either']).optional(),
      steps: z.array(id).min(1).optional(),
      source,
    }),
  ),
  gates: z.array(
    z.strictObject({
      id,
      /** `starts`: every step that puts power through what is the owner's, but for those that open the gate. */
      holds: z.union([z.literal('starts'), z.array(id).min(1)]),
      after: z.array(came).min(1).optional(),
      whileIn: z.array(circuit).min(1).optional(),
      until: z.array(z.array(came).min(1)).min(1),
      when: z.strictObject({ faults: z.array(id).min(1), atLeast: chance }).nullable(),
      unless: z.array(standing),
      sparesRunning: z.boolean().default(false),
      harm: z.enum(HARMS).default('ours'),
      source,
    }),
  ),
});

const zShop = z.strictObject({
  note,
  badLoaner: z.partialRecord(thing, z.strictObject({ actsAs: id, chance: z.record(standing, chance), source })),
  habit: z.strictObject({ first: z.array(id), byGroup: z.partialRecord(group, z.array(id)) }),
});

const zCode = z.strictObject({
  family: id,
  /** A code; `1D-2A`: from, to; `x` in its place stands for any digit. Beeps: `3`, `1 long 2`, `continuous`. */
  code: z.string().min(1).max(20),
  says: z.string().min(1),
  /** The outcome of reading a code that this counts as; null: the board's own manual must say. */
  outcome: id.nullable(),
  source,
});
const zBench = z.strictObject({
  note,
  families: z.array(z.strictObject({ id, name: z.string().min(1) })).min(1),
  checkpoints: z.array(zCode),
  beeps: z.array(zCode.extend({ phase: id.nullable() })),
  unwritten: z.strictObject({ codes: z.array(z.string()), source }),
  /** At the plug: less than `nothing` is nothing; starting adds at least `standbyRise`; steady above `high` is too much. */
  watts: z.strictObject({
    nothing: z.number().positive(),
    standbyRise: z.number().positive(),
    high: z.number().positive(),
    source,
  }),
});

const zValues = z.strictObject({
  note,
  /** Minutes to prove a part that stands in for one that was hurt. */
  proving: z.strictObject({ minutes, source }),
  /** How much more heavily the owner's sound part counts than the same part of ours. */
  owners: z.strictObject({ times: z.number().min(1).max(100), source }),
  /** What has stood it so far: this share of the chance to hurt a part that is new to it, at each further start. */
  stood: z.strictObject({ share: chance, source }),
  /** Price to replace one, in minutes of the bench: used where a part's own value is not known. */
  parts: z.array(z.strictObject({ id: thing, minutes, source })),
});

/** The files of a fault model and what each must look like. */
export const RAW_FILES = {
  'faults.json': zFaults,
  'symptoms.json': zSymptoms,
  'told.json': zTold,
  'pairs.json': zPairs,
  'assembly.json': zAssembly,
  'handlings.json': zHandlings,
  'steps.json': zSteps,
  'dangers.json': zDangers,
  'safety.json': zSafety,
  'deeds.json': zDeeds,
  'shop.json': zShop,
  'bench.json': zBench,
  'values.json': zValues,
} as const;

export type RawFileName = keyof typeof RAW_FILES;
export type RawModel = { readonly [name in RawFileName]: z.infer<(typeof RAW_FILES)[name]> };
export type RawStep = RawModel['steps.json']['steps'][number];
