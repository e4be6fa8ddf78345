import type { PartKind } from '../../../custody/part.ts';
import type { Group } from '../groups.ts';
import type { FaultId } from '../ids.ts';
import type { Circuit } from './circuits.ts';

/** Failures per start and per hour, for a fault that comes and goes. */
export type Rate = { readonly perStart: number; readonly perLoadHour: number; readonly perIdleHour: number };

/** How often a trial could have shown the fault. */
export type Exposure = { readonly starts: number; readonly loadHours: number; readonly idleHours: number };

/** What may be known of a machine and bears on what can be wrong. */
export const MACHINE_FACTS = [
  'no-liquid',
  'no-card',
  'no-graphics',
  'card-inside',
  'no-modular-supply',
  'no-outside-supply',
  'outside-supply',
  'no-battery',
  'no-array',
  'one-dimm',
  'one-drive',
  'aged',
  'encrypted',
  'too-few-watts',
  'enough-watts',
  'riser-inside',
  'no-riser',
] as const;

export type MachineFact = (typeof MACHINE_FACTS)[number];

/** What a machine has several of, so that a fault of one asks which of them it is. */
export const ONE_OF = ['slot', 'channel', 'module', 'output', 'port', 'plug'] as const;
export type Several = (typeof ONE_OF)[number];

export type Fault = {
  readonly id: FaultId;
  /** What is blamed when this fault is confirmed: a part, or what is no part. */
  readonly part:
    | PartKind
    | 'mains'
    | 'plugs'
    | 'settings'
    | 'software'
    | 'outside'
    | 'contact'
    | 'home'
    | 'none'
    | 'ours';
  readonly circuits: readonly Circuit[];
  /** Prior weight by symptom group; groups not listed have the model's floor. */
  readonly weights: { readonly [group in Group]?: number };
  /** Chance that this fault comes and goes, 0..1, before anything was told, and at what rate then. */
  readonly comesAndGoes: number;
  readonly rate: Rate;
  /** What the weight is multiplied by once it was seen on the shop's own bench, on its cord, outlet, cable and screen. */
  readonly atBench: number;
  /** How many times likelier it is by what is known of the machine. */
  readonly given: readonly { readonly is: MachineFact; readonly times: number }[];
  /** A mend by contact, setting or software rather than a part. */
  readonly mendedBy: 'part' | 'reseating' | 'setting' | 'cleaning' | 'software' | 'advice';
  /** It sits in one of several: a verdict says in which, or that it is left open. */
  readonly oneOf?: Several | undefined;
  /** Minutes to put it right once found, tracing apart. */
  readonly mendMinutes: number;
  readonly source: string;
};
