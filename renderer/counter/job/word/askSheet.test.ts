import { describe, expect, it } from 'vitest';
import shop from '../../../../assets/demo/shop.json' with { type: 'json' };
import type { PartId } from '../../../../core/ids.ts';
import type { Job } from '../../../../core/job/job.ts';
import type { ShopSettings } from '../../../../core/job/shop.ts';
import { aPart, TRAY } from '../../../../tests/builders/custody.ts';
import { aJobSheet, anEstimate } from '../../../../tests/builders/jobSheet.ts';
import {
  ASK_KINDS,
  type AskKind,
  freshOffer,
  type OfferSheet,
  offerInput,
  oneByOne,
  partWithoutWord,
  stopsJob,
  usualOptions,
  withOffer,
} from './askSheet.ts';

const settings = shop.settings as unknown as ShopSettings;
const UNIT = 100;
const options = (kind: AskKind, job: Partial<Job> = {}, more: Partial<Parameters<typeof usualOptions>[1]> = {}) =>
  usualOptions(kind, {
    sheet: aJobSheet('owners-word-needed', { limitMinor: 12_000, ...job }),
    part: null,
    t: (key) => key,
    unit: UNIT,
    ...more,
  });
const agrees = (kind: AskKind, id: string, ...given: [Partial<Job>?, Partial<Parameters<typeof usualOptions>[1]>?]) =>
  options(kind, ...given).find((one) => one.id === id)?.agrees;

describe('the limit that is suggested to the owner', () => {
  it('is what it comes to in nine of ten cases with its likeliest part, up to the next five whole units', () => {
    const dear = anEstimate({ p50: 9000, p90: 14_101 }, { name: 'supply', p50: 12_000, p90: 17_301 });
    expect(agrees('spend', 'yes', { estimates: [dear] })?.limitMinor).toBe(17_500);
    expect(agrees('spend', 'yes', { estimates: [anEstimate({ p50: 9000, p90: 14_500 })] })?.limitMinor).toBe(14_500);
  });

  it('follows the newest figure', () => {
    const [old, now] = [anEstimate({ p50: 1, p90: 90_000 }), anEstimate({ p50: 1, p90: 15_000 })];
    expect(agrees('go-on', 'go-on', { estimates: [old, now] })?.limitMinor).toBe(15_000);
  });

  it('is never below the limit that holds, also without a figure', () => {
    expect(agrees('spend', 'yes')?.limitMinor).toBe(12_000);
    expect(agrees('spend', 'yes', { estimates: [anEstimate({ p50: 1, p90: 2 })] })?.limitMinor).toBe(12_000);
  });
});

describe('the usual answers', () => {
  it.each(['spend', 'data-first', 'days-away'] as const)('a no to "%s" agrees to nothing', (kind) => {
    const no = agrees(kind, kind === 'data-first' ? 'leave' : 'no');
    expect(no).toMatchObject({ limitMinor: null, items: [], accepts: false, dead: null });
  });

  it('what takes days is allowed by just that word', () => {
    expect(agrees('days-away', 'yes', {}, { need: 'send-out' })?.daysAway).toBe('send-out');
    expect(agrees('days-away', 'no', {}, { need: 'send-out' })?.daysAway).toBeUndefined();
    expect(agrees('days-away', 'yes', {}, { need: 'copy' })?.daysAway).toBeUndefined();
  });

  it('going on although it is not worth it raises the limit only where the figure passes it', () => {
    expect(agrees('not-worth', 'go-on')).toMatchObject({ beyondWorth: true, limitMinor: null });
    expect(agrees('not-worth', 'go-on', { estimates: [anEstimate({ p50: 1, p90: 20_000 })] })).toMatchObject({
      beyondWorth: true,
      limitMinor: 20_000,
    });
  });

  it('a part that holds data is never only scrapped', () => {
    const ids = (dataBearing: boolean) => options('part', {}, { part: aPart({ dataBearing }) }).map(({ id }) => id);
    expect(ids(false)).toContain('scrap');
    expect(ids(true)).toEqual(['back', 'keep', 'send', 'follow']);
  });

  it('of no part there is nothing to choose', () => {
    expect(options('part')).toEqual([]);
  });

  it('only questions of data and of one part let the work go on', () => {
    expect(ASK_KINDS.filter((kind) => !stopsJob(kind))).toEqual(['data-first', 'part']);
  });
});

it('a part that keeps the machine here for want of a word is asked about first', () => {
  const drive = aPart({ kind: 'drive', dataBearing: true, place: TRAY });
  expect(partWithoutWord(aJobSheet('ready', {}, [drive]))?.id).toBe(drive.id);
  expect(partWithoutWord(aJobSheet('ready', {}, [aPart()]))).toBeNull();
});

it('things agreed one by one each raise the limit by their own price', () => {
  const no = {
    id: 'no',
    says: 'no',
    agrees: { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' as const },
  };
  expect(
    oneByOne(
      [
        { what: ' paste ', priceMinor: 400 },
        { what: 'fan', priceMinor: 900 },
      ],
      no,
    ),
  ).toMatchObject([
    { id: 'thing-1', says: 'paste', agrees: { raisesMinor: 400, items: [{ what: 'paste', priceMinor: 400 }] } },
    { id: 'thing-2', agrees: { raisesMinor: 900 } },
    { id: 'no' },
  ]);
});

describe('an offer', () => {
  const whole: OfferSheet = {
    ...freshOffer(aJobSheet('tracing'), settings),
    forPart: 'module' as PartId,
    part: 'ours' as PartId,
    priceMinor: 4500,
    condition: 'used',
    whyNotSame: ' no longer made ',
  };
  it('is put only when nothing is left to write', () => {
    expect(offerInput(whole)).toMatchObject({ priceMinor: 4500, whyNotSame: 'no longer made' });
    for (const lacking of ['forPart', 'part', 'priceMinor', 'condition', 'warrantyMonths'] as const)
      expect(offerInput({ ...whole, [lacking]: null })).toBeNull();
    expect(offerInput({ ...whole, whyNotSame: '  ' })).toBeNull();
  });
  it('gives the value of the old part only where that is sent to its maker', () => {
    expect(offerInput({ ...whole, coreMinor: 500, oldPart: 'send' })).toMatchObject({ coreMinor: 500 });
    expect(offerInput({ ...whole, coreMinor: 500, oldPart: 'keep' })).not.toHaveProperty('coreMinor');
  });
  it('brings what goes with it along with the yes alone', () => {
    const both = options('offer');
    const extras = [
      { what: 'lead', priceMinor: 300 },
      { what: ' ', priceMinor: 1 },
    ];
    const put = withOffer(both, { ...whole, extras, oldPart: 'back' });
    expect(put).toMatchObject([
      { agrees: { accepts: true, items: [{ what: 'lead' }], dead: { part: 'module', answer: 'back' } } },
      { agrees: { accepts: false, items: [], dead: null } },
    ]);
  });
});
