import { agreed, CONSENTS, type ConsentId } from '../approval/consent.ts';
import { DAYS_AWAY } from '../approval/question.ts';
import type { Part } from '../custody/ledger.ts';
import { PART_KINDS, type PartKind } from '../custody/part.ts';
import { mayCopy, mayTakeDays, worthThatCounts } from '../job/approval/ownersYes.ts';
import { closingAfter } from '../job/bench/clockedWork.ts';
import type { Job } from '../job/job.ts';
import { spentMinor } from '../job/money/charges.ts';
import { withWorkDone } from '../job/money/withinWord.ts';
import { dayMinutesOf, daysUntilPromised } from '../job/promise/delay.ts';
import type { Work } from '../job/work.ts';
import { isOneOf } from '../table.ts';
import { type EpochMs, MINUTE_MS, minutes } from '../time.ts';
import { SWITCHES } from '../tracing/live/model/assemblyStates.ts';
import { CIRCUITS } from '../tracing/live/model/circuits.ts';
import type { Loaner, LoanerProof, LoggedStep, MachineFacts, Switch, TracingCase } from '../tracing/live/types.ts';
import type { JobView } from './tracingDoor.ts';

/** How good a shop part counts in a trial; null when it is no loaner. */
export function loanerProof(part: Part): LoanerProof | null {
  switch (part.standing.is) {
    case 'trial-grade':
    case 'known-good':
    case 'exposed':
    case 'unproved':
      return part.standing.is;
    default:
      return null;
  }
}

/**
 * The present bench state as the tracing engine takes it. `fits` says whether a shop part would fit this machine; `now`:
 * what runs past closing time is weighed by it, null where the hour does not matter.
 */
export function tracingCase(
  view: JobView,
  fits: (part: Part) => Loaner['fits'] = () => 'unknown',
  now: EpochMs | null = null,
): TracingCase {
  const { job, machine } = view;
  const { settings } = view.shop;
  return {
    told: {
      symptoms: job.told.symptoms,
      changed: job.told.changed.map((one) => one.id),
      often: job.told.often,
      onlyWhen: job.told.onlyWhen,
      rate: null,
    },
    hunch: job.thoughts.at(-1)?.fault ?? null,
    seen: job.seen ?? [],
    switches: SWITCHES.filter((name): name is Switch => machine?.switches[name] === true),
    machine: machineFacts(view),
    log: job.work.flatMap((work) => loggedStep(work)),
    stock: [...view.parts.values()].flatMap((part) => asLoaner(part, job.id, fits)),
    agreed: [...CONSENTS.filter((id) => mayNow(job, id)), ...DAYS_AWAY.filter((one) => mayTakeDays(job, one))],
    signatures: 'on-the-sheet',
    passedGates: [],
    money: {
      perMinuteMinor: job.perMinuteMinor,
      limitMinor: job.charging === 'charged' ? job.limitMinor : null,
      spentMinor: spentMinor(begun(job)),
      worthMinor: worthThatCounts(job),
    },
    untilClosing: now === null ? null : untilClosing(view, now),
    delay: {
      dayMinutes: dayMinutesOf(settings),
      daysLeft: now === null || !settings ? null : daysUntilPromised(job, settings, now),
    },
  };
}

/** The owner's newest answer about their data goes before what the sheet says of copies. */
const mayNow = (job: Job, id: ConsentId): boolean => (id === 'copy' ? mayCopy(job) : agreed(job.consents, id));

/** A finding fee that comes on top falls due with the first step: the job as if that were done. */
const begun = (job: Job): Job =>
  job.work.some((work) => work.kind === 'step')
    ? job
    : withWorkDone(job, { run: '', kind: 'step', what: '' }, minutes(0));

/** A case stays the same for so long: what was computed for it need not be computed again each minute. */
const QUARTER = 15;

/** Minutes to closing time, in quarters of an hour; null outside opening hours and where none are known. */
function untilClosing({ shop: { settings } }: JobView, now: EpochMs): number | null {
  const minutes = settings ? (closingAfter(now, settings) - now) / MINUTE_MS : Number.POSITIVE_INFINITY;
  return Number.isFinite(minutes) ? Math.floor(minutes / QUARTER) * QUARTER : null;
}

function loggedStep(work: Work): LoggedStep[] {
  if (work.kind !== 'step' || work.endedAt === null || work.outcome === null) return [];
  return [
    {
      entry: work.run,
      step: work.what,
      outcome: work.outcome,
      ...(work.also && { also: work.also }),
      handsOn: work.handsOn,
      waiting: work.waiting,
      loaners: work.loaners,
      leftOut: work.leftOut.filter((circuit) => isOneOf(CIRCUITS, circuit)),
      struck: work.struck !== null,
    },
  ];
}

function asLoaner(part: Part, job: string, fits: (part: Part) => Loaner['fits']): Loaner[] {
  const standing = loanerProof(part);
  if (part.belongs.to !== 'shop' || standing === null || part.place.at === 'gone') return [];
  const mine = part.reservedFor === job || (part.title !== null && part.title.job === job);
  const away = part.place.at !== 'bin' && part.place.at !== 'rig' && part.place.at !== 'bench';
  return [
    {
      id: part.id,
      kind: part.kind,
      standing,
      valueMinor: valueMinor(part),
      proveMinutes: PROVE_MINUTES,
      wantedBy: part.reservedFor && !mine ? 1 : 0,
      fits: fits(part),
      taken: (part.reservedFor !== null && !mine) || (away && !mine),
      attributes: part.attributes,
    },
  ];
}

/** A price of nothing is one that nobody entered. */
function valueMinor({ attributes }: Part): number | null {
  const value = attributes.valueMinor;
  return typeof value === 'number' && value > 0 ? value : null;
}

/** The dearest of each kind among parts whose value is known. */
function valuesOf(parts: readonly Part[]): MachineFacts['valuesMinor'] {
  const values: { [kind in PartKind]?: number } = {};
  for (const part of parts) {
    const [kind, value] = [PART_KINDS.find((one) => one === part.kind), valueMinor(part)];
    if (kind && value !== null) values[kind] = Math.max(values[kind] ?? 0, value);
  }
  return values;
}

const modular = (supply: Part | undefined): boolean | null => {
  const leads = supply?.attributes.leads;
  return leads === undefined ? null : leads === 'modular';
};

const wattsOf = (supply: Part | undefined): number | null => {
  const watts = supply?.attributes.watts;
  return typeof watts === 'number' ? watts : null;
};

/** Minutes to prove a loaner anew: common practice, no source. */
const PROVE_MINUTES = 15;

function machineFacts({ machine, parts, job }: JobView): MachineFacts {
  const inside = Object.values(machine?.atTakingIn ?? {})
    .map((id) => parts.get(id))
    .filter((part) => part !== undefined);
  const known = machine !== null && machine.slots.length > 0;
  const of = (kind: Part['kind']) => inside.filter((part) => part.kind === kind);
  const slots = machine?.slots.filter((slot) => slot.takes === 'dimm').length ?? 0;
  const flag = (kind: Part['kind'], name: string): boolean | null => {
    const value = of(kind)[0]?.attributes[name];
    return typeof value === 'boolean' ? value : null;
  };
  return {
    graphicsInProcessor: flag('processor', 'picture-output'),
    card: known ? of('card').length > 0 : null,
    dimms: known ? of('dimm').length : null,
    slots: slots > 0 ? slots : null,
    drives: known ? of('drive').length : null,
    riser: known ? of('riser').length > 0 : null,
    addIns: known ? of('add-in').length > 0 : null,
    modularSupply: modular(of('supply')[0]),
    firmwareRescue: flag('board', 'firmware-rescue'),
    encrypted: job.before?.encryption ?? 'unknown',
    keyInHand: job.before?.keyInHand ?? false,
    newPart: null,
    supplyWatts: wattsOf(of('supply')[0]),
    needsWatts: null,
    valuesMinor: valuesOf(inside),
  };
}
