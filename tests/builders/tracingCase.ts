import type { ThingKind } from '../../core/custody/part.ts';
import { leftOutAfter } from '../../core/tracing/live/configuration.ts';
import type {
  Circuit,
  FaultModel,
  Loaner,
  LoanerProof,
  LoggedStep,
  TracingCase,
} from '../../core/tracing/live/types.ts';

const loaner = (id: string, kind: ThingKind, standing: LoanerProof, valueMinor: number): Loaner => ({
  id,
  kind,
  standing,
  valueMinor,
  proveMinutes: 15,
  wantedBy: 0,
  fits: 'yes',
  taken: false,
});

/** What a small shop has on its wall; everything fits. */
export const WALL: readonly Loaner[] = [
  loaner('S01', 'dimm', 'trial-grade', 1500),
  loaner('S02', 'dimm', 'known-good', 4500),
  loaner('S03', 'card', 'trial-grade', 3000),
  loaner('S04', 'card', 'known-good', 12_000),
  loaner('S05', 'supply', 'known-good', 9000),
  loaner('S07', 'processor', 'known-good', 8000),
  loaner('S09', 'board', 'known-good', 7000),
  loaner('S11', 'cooler', 'known-good', 2500),
  loaner('S13', 'cell', 'known-good', 150),
  loaner('S12', 'drive', 'known-good', 2500),
  loaner('E1', 'meter', 'known-good', 4000),
  loaner('E2', 'plug-meter', 'known-good', 2000),
  loaner('E3', 'load-tester', 'known-good', 3000),
  loaner('E4', 'lens', 'known-good', 1000),
  loaner('E5', 'stick', 'known-good', 800),
  loaner('E6', 'port-set', 'known-good', 800),
  loaner('E7', 'heat-camera', 'known-good', 9000),
  loaner('E8', 'dock', 'known-good', 3000),
];

/** A desktop PC with a card, two DIMMs in four slots and a drive, nothing done yet; the owner agreed to all that is usual. */
export function aTracingCase(given: Partial<TracingCase> = {}): TracingCase {
  return {
    told: { symptoms: ['dark-runs'], changed: [], often: ['every-time'], onlyWhen: [], rate: null },
    hunch: null,
    seen: [],
    switches: [],
    machine: {
      graphicsInProcessor: true,
      card: true,
      dimms: 2,
      slots: 4,
      drives: 1,
      riser: false,
      addIns: false,
      modularSupply: false,
      firmwareRescue: null,
      encrypted: 'no',
      keyInHand: false,
      newPart: null,
      supplyWatts: null,
      needsWatts: null,
      valuesMinor: {},
    },
    log: [],
    stock: WALL,
    agreed: ['open', 'own-parts-in', 'start-own', 'read', 'copy', 'write', 'risk'],
    signatures: 'in-the-log',
    passedGates: [],
    money: { perMinuteMinor: 75, limitMinor: 25_000, spentMinor: 0, worthMinor: null },
    untilClosing: null,
    delay: { dayMinutes: 30, daysLeft: null },
    ...given,
  };
}

/** The case after one more step with this outcome, or these findings ("wet+dust"); `stays`: the part stays out (or ours in its place). */
export function afterDoing(
  model: FaultModel,
  tracing: TracingCase,
  step: string,
  outcome: string,
  more: {
    readonly loaners?: LoggedStep['loaners'];
    readonly stays?: boolean;
    readonly leftOut?: readonly Circuit[];
  } = {},
): TracingCase {
  const known = model.steps[model.stepIndex.get(step) ?? -1];
  if (!known) throw new Error(`no step ${step}`);
  const [first = '', ...also] = outcome.split('+');
  const entry: LoggedStep = {
    entry: `e${tracing.log.length + 1}`,
    step,
    outcome: first,
    ...(also.length > 0 && { also }),
    handsOn: known.handsOn,
    waiting: known.waiting,
    loaners: more.loaners ?? [],
    leftOut: more.leftOut ?? leftOutAfter(model, tracing, known, more.stays ?? false),
    struck: false,
  };
  return { ...tracing, log: [...tracing.log, entry] };
}
