import type { Tag } from '../custody/part.ts';
import type { StaffId } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import type { Personal } from '../journal/personal.ts';
import type { Currency } from '../money/money.ts';
import type { TaxTerms } from '../money/taxTerms.ts';
import type { TagStock } from '../papers/sizes.ts';
import { renameDifference } from '../tracing/live/renamed/renameFiles.ts';
import { type PriorTally, renameTally } from '../tracing/live/shop/closedTracing.ts';
import type { ModelDifference } from '../tracing/live/shop/modelFiles.ts';

export type Staff = {
  readonly id: StaffId;
  readonly name: string;
  readonly roles: readonly ('desk' | 'bench' | 'keeper')[];
  /** When they are at the bench; the opening hours where it is not set. */
  readonly hours?: readonly OpenFrom[];
};

/** Hours of one weekday, local wall time `HH:MM`; 0 is Sunday. */
export type OpenFrom = { readonly weekday: number; readonly from: string; readonly to: string };

/** How the shop promises a day. */
export type PromiseRules = {
  /** The promised day is the one by which it is ready with this chance. */
  readonly percentile: number;
  /** Days on which the shop is closed whatever the weekday, `YYYY-MM-DD`. */
  readonly closed: readonly string[];
  /** Days from ordering a part to having it: 5th percentile, median, 95th percentile. */
  readonly leadDays: { readonly low: number; readonly likely: number; readonly high: number };
  /** What a day more costs a job, in bench minutes, where a wait is weighed; the usual one where it is not set. */
  readonly dayMinutes?: number;
};

/** What a shop sets once: money, words, time and the rules it works by. */
export type ShopSettings = {
  readonly name: string;
  readonly address: string;
  readonly phone: string;
  readonly locale: string;
  readonly language: string;
  readonly zone: string;
  readonly currency: Currency;
  readonly paperSize: 'A4' | 'Letter';
  readonly tax: TaxTerms;
  readonly perMinuteMinor: number;
  readonly findingFee: { readonly minor: number; readonly credited: boolean; readonly coversMinutes: number };
  readonly warrantyMonths: { readonly work: number; readonly part: number };
  readonly open: readonly OpenFrom[];
  readonly benches: readonly string[];
  readonly rigs: readonly string[];
  readonly rules: {
    readonly triesBeforeHome: number;
    readonly questionValidHours: number;
    readonly keptDays: number;
    readonly storageFeeMinorPerDay: number;
    readonly storageFeeAfterDays: number;
    readonly standingLapsesDays: number;
    readonly processorLimitC: number;
  };
  /** What local law allows for things not collected: a text the shop fills in. */
  readonly notCollectedText: string;
  /** Left out: eight in ten, no closing days, the usual lead times. */
  readonly promises?: PromiseRules;
  /** What tags and labels are printed on; sheets of the shop's paper until it is set. */
  readonly tagsOn?: TagStock;
  /** A sign that the shop's scanners are set to send first; with it nothing that is typed is ever held back. */
  readonly scanSign?: string;
};

/** The shop's own edition of the fault model: what it changed in the one delivered. */
export type ModelEdition = { readonly name: string; readonly changes: readonly ModelDifference[] };

export type Shop = {
  readonly settings: ShopSettings | null;
  readonly staff: readonly Staff[];
  /** Editions taken into use, the last one works; none: the model as delivered. */
  readonly models: readonly ModelEdition[];
  /** What was taken over from the shop's own closed jobs; null: the priors as stated. */
  readonly learnt: PriorTally | null;
};

export type ShopBodies = {
  readonly 'shop-opened': { readonly settings: ShopSettings; readonly staff: Personal<readonly Staff[]> };
  readonly 'shop-changed': { readonly settings: Partial<ShopSettings> };
  /** A pre-printed tag that hung on nothing. */
  readonly 'tag-voided': { readonly tag: Tag };
  readonly 'staff-changed': { readonly staff: Personal<readonly Staff[]> };
  readonly 'model-used': ModelEdition;
  /** Back to the edition before; with the first one, to the model as delivered. */
  readonly 'model-gone-back': { readonly from: string };
  readonly 'priors-learnt': PriorTally;
  readonly 'priors-reset': { readonly counted: number };
};

export type ShopEntry = EntryOf<'shop', ShopBodies>;

export const noShop: Shop = { settings: null, staff: [], models: [], learnt: null };

/** The shop after one more entry of its stream. */
export function applyShop(shop: Shop, entry: ShopEntry): Shop {
  switch (entry.kind) {
    case 'shop-opened':
      return { ...shop, settings: entry.body.settings, staff: entry.body.staff.value ?? [] };
    case 'shop-changed':
      return shop.settings ? { ...shop, settings: { ...shop.settings, ...entry.body.settings } } : shop;
    case 'tag-voided':
      return shop;
    case 'staff-changed':
      return { ...shop, staff: entry.body.staff.value ?? [] };
    case 'model-used':
      return {
        ...shop,
        models: [...shop.models, { ...entry.body, changes: entry.body.changes.map(renameDifference) }],
      };
    case 'model-gone-back':
      return { ...shop, models: shop.models.slice(0, -1) };
    case 'priors-learnt':
      return { ...shop, learnt: renameTally(entry.body) };
    case 'priors-reset':
      return { ...shop, learnt: null };
  }
}
