import { z } from 'zod';
import { tagShape } from '../custody/part.ts';
import { staffIdShape } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import { personalShape } from '../journal/personal.ts';
import { currencyShape } from '../money/money.ts';
import { taxTermsShape } from '../money/taxTerms.ts';
import { tagStockShape } from '../papers/sizes.ts';
import { ROLES } from '../people/roles.ts';
import { type BodiesOf, type Shaped, someOf } from '../shape.ts';
import { renameDifference } from '../tracing/live/renamed/renameFiles.ts';
import { type KeptTally, type PriorTally, renameTally } from '../tracing/live/shop/closedTracing.ts';

const openFromShape = z.strictObject({ weekday: z.number(), from: z.string(), to: z.string() });

const staffShape = z.strictObject({
  id: staffIdShape,
  name: z.string(),
  roles: z.array(z.enum(ROLES)),
  /** When they are at the bench; the opening hours where it is not set. */
  hours: z.array(openFromShape).exactOptional(),
});
export type Staff = Shaped<typeof staffShape>;

/** Hours of one weekday, local wall time `HH:MM`; 0 is Sunday. */
export type OpenFrom = Shaped<typeof openFromShape>;

/** How the shop promises a day. */
const promiseRulesShape = z.strictObject({
  /** The promised day is the one by which it is ready with this chance. */
  percentile: z.number(),
  /** Days on which the shop is closed whatever the weekday, `YYYY-MM-DD`. */
  closed: z.array(z.string()),
  /** Days from ordering a part to having it: 5th percentile, median, 95th percentile. */
  leadDays: z.strictObject({ low: z.number(), likely: z.number(), high: z.number() }),
  /** What a day more costs a job, in bench minutes, where a wait is weighed; the usual one where it is not set. */
  dayMinutes: z.number().exactOptional(),
});
export type PromiseRules = Shaped<typeof promiseRulesShape>;

/** What a shop sets once: money, words, time and the rules it works by. */
const shopSettingsShape = z.strictObject({
  name: z.string(),
  address: z.string(),
  phone: z.string(),
  locale: z.string(),
  language: z.string(),
  zone: z.string(),
  currency: currencyShape,
  paperSize: z.enum(['A4', 'Letter']),
  tax: taxTermsShape,
  perMinuteMinor: z.number(),
  findingFee: z.strictObject({ minor: z.number(), credited: z.boolean(), coversMinutes: z.number() }),
  warrantyMonths: z.strictObject({ work: z.number(), part: z.number() }),
  open: z.array(openFromShape),
  benches: z.array(z.string()),
  rigs: z.array(z.string()),
  rules: z.strictObject({
    triesBeforeHome: z.number(),
    questionValidHours: z.number(),
    keptDays: z.number(),
    storageFeeMinorPerDay: z.number(),
    storageFeeAfterDays: z.number(),
    standingLapsesDays: z.number(),
    processorLimitC: z.number(),
    /** Whole years after the year of a bill for which local law has it kept; the usual ones where it is not set. */
    billYears: z.number().exactOptional(),
  }),
  /** What local law allows for things not collected: a text the shop fills in. */
  notCollectedText: z.string(),
  /** Left out: eight in ten, no closing days, the usual lead times. */
  promises: promiseRulesShape.exactOptional(),
  /** What tags and labels are printed on; sheets of the shop's paper until it is set. */
  tagsOn: tagStockShape.exactOptional(),
  /** A sign that the shop's scanners are set to send first; with it nothing that is typed is ever held back. */
  scanSign: z.string().exactOptional(),
  /** Minutes without a hand on it until a screen locks; the usual ones where it is not set. */
  lockAfterMinutes: z.number().exactOptional(),
});
export type ShopSettings = Shaped<typeof shopSettingsShape>;

/** The shop's own edition of the fault model: what it changed in the one delivered. */
const modelEditionShape = z.strictObject({
  name: z.string(),
  changes: z.array(
    z.strictObject({
      file: z.string(),
      path: z.string(),
      before: z.unknown().exactOptional(),
      after: z.unknown().exactOptional(),
    }),
  ),
});
export type ModelEdition = Shaped<typeof modelEditionShape>;

export type Shop = {
  readonly settings: ShopSettings | null;
  readonly staff: readonly Staff[];
  /** Editions taken into use, the last one works; none: the model as delivered. */
  readonly models: readonly ModelEdition[];
  /** What was taken over from the shop's own closed jobs; null: the priors as stated. */
  readonly learnt: PriorTally | null;
};

const tallyShape: z.ZodType<KeptTally> = z.strictObject({
  counted: z.number(),
  excluded: z.strictObject({
    named: z.number(),
    handedOver: z.number(),
    notReproduced: z.number(),
    cameBack: z.number(),
    unknown: z.number(),
  }),
  /** Groups and faults by the ids of their day: renamed when folded. */
  counts: z.array(z.strictObject({ group: z.string(), fault: z.string(), jobs: z.number() })),
});

export const SHOP_BODIES = {
  'shop-opened': z.strictObject({ settings: shopSettingsShape, staff: personalShape(z.array(staffShape)) }),
  'shop-changed': z.strictObject({ settings: someOf(shopSettingsShape) }),
  /** A pre-printed tag that hung on nothing. */
  'tag-voided': z.strictObject({ tag: tagShape }),
  'staff-changed': z.strictObject({ staff: personalShape(z.array(staffShape)) }),
  'model-used': modelEditionShape,
  /** Back to the edition before; with the first one, to the model as delivered. */
  'model-gone-back': z.strictObject({ from: z.string() }),
  'priors-learnt': tallyShape,
  'priors-reset': z.strictObject({ counted: z.number() }),
} as const;
export type ShopBodies = BodiesOf<typeof SHOP_BODIES>;

export type ShopEntry = EntryOf<'shop', ShopBodies>;

export const noShop: Shop = { settings: null, staff: [], models: [], learnt: null };

/** The zone of the shop's clock; UTC before it was set up. */
export const zoneOf = ({ settings }: Pick<Shop, 'settings'>): string => settings?.zone ?? 'UTC';

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
