import consents from '../../../assets/words/en/consents.json' with { type: 'json' };
import type { AddendumFacts } from '../../../core/papers/builders/addendum.ts';
import type { ConsentSheetFacts } from '../../../core/papers/builders/consentSheet.ts';
import type { EstimatePaperFacts } from '../../../core/papers/builders/estimate.ts';
import { say } from '../../../core/text/say.ts';
import { minutes } from '../../../core/time.ts';
import { common, october, pounds, signedAt } from './harrowmouth.ts';

const signed = signedAt(october(13, '09:47'));

export const consentSheetFacts: ConsentSheetFacts = {
  ...common('2026-0113', october(13, '09:47')),
  lines: [
    { asks: consents.open, answer: 'yes' },
    { asks: consents['own-parts-in'], answer: 'yes' },
    { asks: say(consents.limit, { amount: '£120.00' }), answer: 'yes' },
    { asks: say(consents.fee, { amount: '£30.00' }), answer: 'yes' },
    { asks: consents['offer-lesser'], answer: 'yes' },
    { asks: consents['start-own'], answer: 'yes' },
    { asks: consents.read, answer: 'no' },
    { asks: consents.write, answer: 'no' },
    { asks: say(consents.copy, { days: 14 }) },
    { asks: say(consents['keep-days'], { days: 90 }), answer: 'yes' },
    { asks: consents.photos, answer: 'yes' },
    { asks: consents.dead.back, unansweredIs: 'back' },
    { asks: consents['data-parts'].back, answer: 'yes' },
    { asks: say(consents['who-collects'], { name: 'Colm Amberley' }), answer: 'yes' },
    { asks: consents.film, answer: 'no', ownSignature: {} },
    {
      asks: say(consents.risk, {
        work: 'taking out cooler, processor and board',
        mayHappen: 'an old part may not come through it',
      }),
      answer: 'yes',
      ownSignature: { given: signed },
    },
    { asks: say(consents.destroy, { part: 'any drive' }), answer: 'no', ownSignature: {} },
  ],
  signature: signed,
  keepDays: 90,
};

export const addendumFacts: AddendumFacts = {
  ...common('2026-0114', october(13, '14:00')),
  of: { named: 'Consent sheet', number: '2026-0113', issuedAt: october(13, '09:47') },
  line: consents.read,
  before: 'no',
  now: 'yes',
  at: october(13, '13:58'),
  how: 'Judith Amberley, by telephone, 01632 960 147',
  heardBy: 'Mina Tidewell',
  readBack: 'You may look at my data to find the fault.',
};

export const estimateFacts: EstimatePaperFacts = {
  ...common('2026-0113', october(13, '09:47')),
  defect: { says: 'It runs, but the screen stays dark.', only: 'told' },
  repair: 'Find the fault, put right what is loose or badly seated, and try the computer before it goes home.',
  price: {
    is: 'worked-out',
    how: '£0.75 for each minute of work by hand. Waiting and the proving of our own parts are not charged.',
    likely: { p10: pounds(18), p50: pounds(34.5), p90: pounds(69) },
    maximum: pounds(120),
  },
  tax: 'All prices with 20 % tax inside.',
  findingFee: { amount: pounds(30), creditedWhenRepaired: true },
  time: { work: minutes(46), ready: october(16, '11:00') },
  meanwhile: { lent: false },
  more: ['Work is covered for 6 months, parts we sell for 24.'],
};
