import { NEW_JOB } from '../../../core/job/promise/turns.ts';
import type { EpochMs } from '../../../core/time.ts';
import type { Reader } from '../../../db/index.ts';
import type { Engine } from './engine.ts';
import { AS_IF_AGREED, seedOf } from './estimates.ts';
import { loadView } from './loadView.ts';
import { queueOutlook } from './outlook.ts';

/** The figure at the foot of the taking-in sheet, from symptoms and what changed last alone; nothing is kept. */
export async function firstEstimate(
  read: Reader,
  engine: Engine,
  told: { readonly symptoms: readonly string[]; readonly changed: readonly string[]; readonly limitMinor: number },
  at: EpochMs,
  signal?: AbortSignal,
) {
  const { shop } = await loadView(read, {}, at);
  const { settings } = shop;
  if (!settings || told.symptoms.length === 0) return null;
  const unknown = {
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
  } as const;
  const figures = await engine.estimate(
    shop,
    {
      case: {
        told: { symptoms: told.symptoms, changed: told.changed, often: [], onlyWhen: [], rate: null },
        seen: [],
        switches: [],
        machine: unknown,
        log: [],
        stock: [],
        agreed: AS_IF_AGREED,
        passedGates: [],
        money: {
          perMinuteMinor: settings.perMinuteMinor,
          limitMinor: told.limitMinor,
          spentMinor: 0,
          worthMinor: null,
          feeMinor: settings.findingFee.minor,
        },
        untilClosing: null,
      },
      work: engine.work,
      rates: {
        perMinuteMinor: settings.perMinuteMinor,
        spentMinor: 0,
        spentMinutes: 0,
        limitMinor: told.limitMinor,
        parts: {},
      },
      seed: seedOf(told.symptoms.join(',')),
      paths: 500,
      policy: 'ratio',
    },
    signal,
  );
  if ('refused' in figures) return null;
  return {
    ...figures.handsOn,
    priceP50: figures.price.p50,
    priceP90: figures.price.p90,
    passesLimit: figures.passesLimit ?? 0,
    day: (await queueOutlook(read, shop, at, figures.handsOn)).get(NEW_JOB)?.day ?? null,
  };
}
