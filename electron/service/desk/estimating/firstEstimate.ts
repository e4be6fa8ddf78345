import type { CommandRequest } from '../../../../core/commands/asked.ts';
import { idOf } from '../../../../core/entries/subjects.ts';
import { seedOf } from '../../../../core/figures/seedOf.ts';
import { dayMinutesOf } from '../../../../core/job/promise/delay.ts';
import { NEW_JOB } from '../../../../core/job/promise/turns.ts';
import type { Shop as ShopState } from '../../../../core/job/shop.ts';
import { knownWork } from '../../../../core/labour/knownWork.ts';
import type { EstimateAsked, LabourEstimate } from '../../../../core/labour/types.ts';
import type { EpochMs } from '../../../../core/time.ts';
import type { TracingCase } from '../../../../core/tracing/live/types.ts';
import type { Executed, Reader } from '../../../../db/index.ts';
import { carryOut } from '../carryOut.ts';
import { minutesByOwnTimes } from '../closed/ownTimes.ts';
import { queueOutlook } from '../sheets/outlook.ts';
import type { Engine } from './engine.ts';
import { AS_IF_AGREED, type Estimating, figuresOf, PATHS } from './estimates.ts';

/** What is known of a machine that is not here yet. */
type Told = {
  readonly symptoms: readonly string[];
  readonly changed: readonly string[];
  /** Work asked for by name; null where a fault is to be found. */
  readonly tasks: readonly string[] | null;
  readonly limitMinor: number | null;
};

/** The figure at the foot of the taking-in sheet, from what was told alone; nothing is kept. */
export async function firstEstimate(read: Reader, engine: Engine, told: Told, at: EpochMs, signal?: AbortSignal) {
  const shop = await read.load('shop');
  const figures = await beforeItComes(read, engine, told, { paths: 500, policy: 'ratio' }, signal);
  if (!figures) return null;
  return {
    ...figures.handsOn,
    priceP50: figures.price.p50,
    priceP90: figures.price.p90,
    passesLimit: figures.passesLimit ?? 0,
    firstFigure: figures.firstFigure,
    figures: figuresOf(figures, 'told'),
    day: (await queueOutlook(read, shop, at, figures.handsOn)).get(NEW_JOB)?.day ?? null,
  };
}

/** Estimates an enquiry that was just written down, looking one step ahead, and keeps the figure with it. */
export async function estimateEnquiry(
  { shop, tools, engine }: Estimating,
  asked: CommandRequest<'enquire'>,
  done: Executed,
  signal: AbortSignal,
): Promise<void> {
  const { symptoms, tasks = null } = asked.input;
  const told = { symptoms, tasks: tasks?.length ? tasks : null, changed: [], limitMinor: null };
  const how = { paths: PATHS['one-step'], policy: 'one-step' } as const;
  const figures = await beforeItComes(await shop.read(), engine, told, how, signal);
  if (!figures) return;
  await carryOut(shop, tools, 'service', {
    command: `estimate-${done.seq}-${figures.policy}`,
    by: asked.by,
    name: 'noteEnquiryEstimate',
    input: {
      enquiry: idOf('enquiry', done.firstStream),
      estimate: { ...figuresOf(figures, 'told'), passesLimit: 0 },
    },
  });
}

async function beforeItComes(
  read: Reader,
  engine: Engine,
  told: Told,
  how: Pick<EstimateAsked, 'paths' | 'policy'>,
  signal?: AbortSignal,
): Promise<LabourEstimate | null> {
  const shop = await read.load('shop');
  const { settings } = shop;
  const { symptoms, tasks, limitMinor } = told;
  if (!settings || (tasks === null ? symptoms.length === 0 : tasks.length === 0)) return null;
  const { work, named, stepTimes } = await minutesByOwnTimes(read, engine, null);
  const figures = await engine.estimate(
    shop,
    {
      case: tasks ? null : unseen(told, settings),
      work: tasks ? knownWork(tasks, new Set(), work, named) : work,
      stepTimes,
      rates: { perMinuteMinor: settings.perMinuteMinor, spentMinor: 0, spentMinutes: 0, limitMinor, parts: {} },
      seed: seedOf((tasks ?? symptoms).join(',')),
      ...how,
    },
    signal,
  );
  return 'refused' in figures ? null : figures;
}

/** A machine of which nothing is known but what was told. */
function unseen({ symptoms, changed, limitMinor }: Told, settings: NonNullable<ShopState['settings']>): TracingCase {
  const { perMinuteMinor, findingFee } = settings;
  return {
    told: { symptoms, changed, often: [], onlyWhen: [], rate: null },
    hunch: null,
    seen: [],
    switches: [],
    machine: {
      graphicsInProcessor: null,
      card: null,
      dimms: null,
      slots: null,
      drives: null,
      riser: null,
      addIns: null,
      modularSupply: null,
      firmwareRescue: null,
      encrypted: 'unknown',
      keyInHand: false,
      newPart: null,
      supplyWatts: null,
      needsWatts: null,
      valuesMinor: {},
    },
    log: [],
    stock: [],
    agreed: AS_IF_AGREED,
    signatures: 'as-said',
    passedGates: [],
    money: {
      perMinuteMinor,
      limitMinor: limitMinor ?? 0,
      spentMinor: findingFee.credited ? 0 : findingFee.minor,
      worthMinor: null,
    },
    untilClosing: null,
    delay: { dayMinutes: dayMinutesOf(settings), daysLeft: null },
  };
}
