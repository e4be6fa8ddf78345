import type { CollectionAuthorisationFacts } from '../../../core/papers/builders/collectionAuthorisation.ts';
import type { DeclinedToSaveDataFacts } from '../../../core/papers/builders/declinedToSaveData.ts';
import type { DepositReceiptFacts } from '../../../core/papers/builders/depositReceipt.ts';
import type { IncidentFacts } from '../../../core/papers/builders/incident.ts';
import type { LentPartFacts } from '../../../core/papers/builders/lentPartAgreement.ts';
import type { LastNoticeFacts, ReminderFacts } from '../../../core/papers/builders/reminders.ts';
import type { SanitisationFacts } from '../../../core/papers/builders/sanitisationCertificate.ts';
import { common, october, pounds, signedAt } from './harrowmouth.ts';

export const sanitisationFacts: SanitisationFacts = {
  ...common('2026-0004', october(14, '12:10')),
  medium: {
    what: 'Your old disk',
    maker: 'Oakrill',
    model: 'Oakrill 2T',
    serial: 'OK-77120-331',
    property: 'X8D2KT7',
    type: '3.5-inch disk, magnetic, 2 TB',
    source: 'Taken out of machine F6C 6KA 5',
    destination: 'Recycling',
  },
  method: 'purge',
  technique: 'The drive’s own sanitise command, cryptographic erase',
  tool: 'General-purpose drive tool, version 2.12',
  verification: { how: 'Full read of all addressable blocks', withoutErrors: true },
  doneBy: {
    name: 'Bram Ostler',
    title: 'technician',
    at: october(14, '10:20'),
    place: 'bench 2',
    contact: '01632 960 114',
    signature: signedAt(october(14, '10:20'), 'Bram Ostler'),
  },
  verifiedBy: {
    name: 'Nessa Quill',
    title: 'technician',
    at: october(14, '12:05'),
    place: 'bench 1',
    contact: '01632 960 114',
  },
  word: 'Signed for on 13 October 2026 by Judith Amberley.',
};

export const declinedFacts: DeclinedToSaveDataFacts = {
  ...common('2026-0006', october(13, '14:10')),
  why: 'Memory is under suspicion: each start may write rubbish to the disk.',
  offered: { what: 'A copy of all data to a drive of ours, before any further start', amount: pounds(18) },
  risk: 'Drawings and mail on the disk may be damaged or lost for good.',
  word: {
    who: 'Judith Amberley',
    at: october(13, '14:06'),
    heardBy: 'Bram Ostler',
    given: { how: 'in-writing', words: 'No copy, please.' },
  },
};

export const incidentFacts: IncidentFacts = {
  ...common('2026-0002', october(14, '16:00')),
  happenedAt: october(14, '15:20'),
  what: 'while the cooler was being drawn tight, one of its screws broke off in the bracket.',
  more: [
    'The screw had been turned by hand. The bracket can no longer be used; processor and board are unhurt, seen under the lens.',
  ],
  part: { what: 'Cooler Windlass T-155', tag: 'HHM47KA' },
  present: ['Nessa Quill', 'Bram Ostler'],
  photographs: 3,
  means: 'Your computer stays here one day longer, until the new bracket is here.',
  options: [
    { title: 'A bracket like yours', figure: pounds(0), lines: ['tomorrow, 15:00'] },
    { title: 'Another cooler', figure: pounds(0), lines: ['as good as yours, today'] },
  ],
};

export const lentFacts: LentPartFacts = {
  ...common('2026-0003', october(15, '17:30')),
  part: { what: 'Card Brindle 30', tag: 'RRH3A3R' },
  back: october(29, '17:00'),
  place: 'In your computer, in the slot nearest the processor.',
  deposit: pounds(20),
  ifLate: 'We call you. After two weeks more the deposit stays with us and the part is yours.',
  ifBroken: 'If it fails by itself you owe nothing.',
  holdsData: false,
};

export const reminderFacts: ReminderFacts = {
  ...common('2026-0011', october(29, '10:00')),
  readySince: october(14, '15:45'),
  due: pounds(246.5),
  open: ['Tuesday to Friday 09:00 to 13:00 and 14:00 to 18:00', 'Saturday 09:30 to 13:00'],
  before: [{ at: october(22, '10:00'), what: 'telephone, message left' }],
};
export const lastNoticeFacts: LastNoticeFacts = {
  ...reminderFacts,
  number: '2026-0001',
  storage: { from: october(30, '09:00'), perDay: pounds(1) },
  until: october(31, '12:00'),
  afterThat: '(text of the shop, as its local law allows).',
  dataFirst: 'Before anything else we copy nothing and look at nothing: the drives stay in the machine, untouched.',
};
export const authorisationFacts: CollectionAuthorisationFacts = {
  ...common('2026-0009', october(14, '16:30')),
  who: 'Colm Amberley',
  shows: 'This paper or the intake receipt, and something with his name on it.',
  holdsUntil: october(31, '13:00'),
};
export const depositFacts: DepositReceiptFacts = {
  ...common('2026-0005', october(13, '17:40')),
  amount: pounds(40),
  paidAt: october(13, '17:40'),
  how: 'by card',
  what: 'the board on order',
  ifNothing: 'You get it back in full, unless the board was ordered for you alone and cannot go back.',
  takenBy: 'Mina Tidewell',
};
