import type { IntakeReceiptFacts } from '../../../core/papers/builders/intakeReceipt.ts';
import { minutes } from '../../../core/time.ts';
import { common, october, pounds, signedAt } from './harrowmouth.ts';

export const intakeReceiptFacts: IntakeReceiptFacts = {
  ...common('2026-0113', october(13, '09:47')),
  acceptedAt: october(13, '09:47'),
  acceptedBy: 'Mina Tidewell',
  told: 'Since we moved house it stays dark. The fans turn, the screen says no signal. I pressed it again and again.',
  toldTerms: ['I hear it running, but the screen stays dark', 'The screen says there is no signal'],
  changedLast: ['It was moved or sent (Saturday 10 October, upright in a van)'],
  howOften: ['Every time I start it', 'For 3 days now'],
  lastWorked: 'Friday evening, 9 October',
  cameAlong: [
    { what: 'mains cord', count: 1 },
    { what: 'DisplayPort lead', count: 1 },
  ],
  liftedBy: 1,
  photographs: 2,
  estimate: {
    minutes: { p10: minutes(24), p50: minutes(46), p90: minutes(92) },
    price: { p10: pounds(18), p50: pounds(34.5), p90: pounds(69) },
  },
  limit: pounds(120),
  findingFee: { amount: pounds(30), creditedWhenRepaired: true },
  promise: october(16, '11:00'),
  encryption: 'not-known',
  keyPlaces: [
    'in the account that the system was set up with',
    'on a printed sheet kept with the papers of the purchase',
  ],
  backup: '“in spring, I think”',
  access: 'none',
  mayCollect: ['Judith Amberley', 'her brother Colm Amberley'],
  boughtAndWarranty: '2020, built to order. The maker’s warranty is over; there are no seals.',
  signature: signedAt(october(13, '09:47')),
};
