import { PART_KINDS } from '../../../custody/part.ts';
import { assemblyOf, opensOf } from '../assembly.ts';
import { lookMask } from '../configuration.ts';
import { maskOf } from '../model/circuits.ts';
import type { DangersOfWork, FaultModel, Step, TracingCase } from '../types.ts';
import { OPENINGS } from './openings.ts';

/** What a step does that can hurt people, a machine, data or a part of ours. With `:kind` where a part is meant. */
export const DEEDS = [
  /** Mains on the owner's machine, were it only for standby. */
  'mains-on',
  'start',
  /** Runs it hard for a third of an hour or more. Common practice, no source. */
  'load',
  'suspect-put-back-under-power',
  /** Their own card gets power again after hands were on it. */
  'own-card-powered',
  /** Their own system may start, and be it by leaving the machine alone. */
  'owners-system-started',
  /** Their own system is wanted to run. */
  'own-system-used',
  /** Makes their drive work: its health, its surface, its log, its system. */
  'drive-worked',
  'drive-asked',
  'drive-read-through',
  /** Their drive spins up in the machine. */
  'drive-powered',
  'drive-on-dock',
  'drive-copied',
  'supply-on-tester',
  'loaner-in',
  'own-part-on-rig',
  'part-ordered',
  'sent-away',
  'write-to-owners-drive',
  /** A system, or what starts it, is written anew; and nothing of before is left. */
  'system-written',
  'system-set-up-anew',
  'settings-cleared',
  'firmware-written',
  'firmware-by-setup',
  /** By a button of the board, nothing else of it running. */
  'firmware-by-button',
  'mains-pulled',
  /** Follow from how far the machine is opened for it; said at a step only where they do not. */
  ...OPENINGS,
  /** No step's: the tracing ends by a verdict. */
  'settled',
] as const;
type Deed = (typeof DEEDS)[number];

/** No step's: only the end of the tracing is. */
export const THE_END: Deed = 'settled';

/** Done to their drive only where it is in circuit. */
const TO_THE_DRIVE: readonly string[] = [
  'owners-system-started',
  'own-system-used',
  'drive-worked',
  'drive-asked',
  'drive-read-through',
  'drive-powered',
] satisfies readonly Deed[];

/** Of these it is also said which kind of part it is. */
const OF_A_PART: readonly string[] = ['loaner-in', 'own-part-on-rig'] satisfies readonly Deed[];

const DRIVE = maskOf(['drive']);

/** A deed; with a kind of part behind it only where it is one to a part. */
export function isDeed(said: string): boolean {
  const [deed, kind, ...more] = said.split(':');
  return (
    DEEDS.some((one) => one === deed) &&
    more.length === 0 &&
    (kind === undefined || (OF_A_PART.some((one) => one === deed) && PART_KINDS.some((one) => one === kind)))
  );
}

/** What a step does to this machine as it stands now: as the model says, and how far it is opened. */
export function deedsOf(model: FaultModel, tracing: TracingCase, step: Step): ReadonlySet<string> {
  const assembly = assemblyOf(model, tracing.switches);
  const opened = opensOf(assembly, step);
  return deedsNow(
    [...step.deeds, ...assembly.states.flatMap(({ id, deed }) => (deed !== null && opened.includes(id) ? [deed] : []))],
    lookMask(model, tracing.log, step).look,
  );
}

/** What is written down as done, less what cannot be with these circuits out. `out`: bits over CIRCUITS. */
export const deedsNow = (written: readonly string[], out: number): ReadonlySet<string> =>
  new Set((out & DRIVE) === 0 ? written : written.filter((deed) => !TO_THE_DRIVE.includes(deed)));

/** Deeds that a step can do on some machine: as written, and all that opening it may come to. */
export const deedsEver = (step: Step): readonly string[] => [...step.deeds, ...OPENINGS];

/** Proving our own parts touches nothing of the owner's. */
const NOTHING: DangersOfWork = { deeds: [], cautions: [] };

/** What a piece of work that is no step does, and its cautions: as said for it, else for its kind. */
export function dangersOf(model: FaultModel, kind: string, what: string): DangersOfWork {
  const { known, others } = model.work;
  const own = known.get(what);
  if (own) return own;
  return kind === 'fitting' || kind === 'proof' || kind === 'cleaning' || kind === 'handling' ? others[kind] : NOTHING;
}
