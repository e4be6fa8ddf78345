import type { BillFacts } from '../../../core/papers/builders/bill.ts';
import type { ReplacedPartFacts } from '../../../core/papers/builders/replacedPartSlip.ts';
import type { ReturnReportFacts, StepFacts } from '../../../core/papers/builders/returnReportFacts.ts';
import type { BenchTagFacts, PartTagFacts } from '../../../core/papers/builders/tags.ts';
import { epochMs, minutes } from '../../../core/time.ts';
import { common, october, pounds, signedAt } from './harrowmouth.ts';

const step = (day: number, clock: string, what: string, outcome: string, hands: number, wait: number): StepFacts => ({
  at: october(day, clock),
  what,
  outcome,
  hands: minutes(hands),
  wait: minutes(wait),
});

const log: readonly StepFacts[] = [
  step(13, '11:05', 'Mains looked at', 'our outlet and cord, the supply’s switch on', 1, 0),
  step(
    13,
    '11:06',
    'Picture looked at',
    'our screen and cable at the card, input chosen; your own lead tried too',
    2,
    0,
  ),
  step(13, '11:08', 'Stripped outside', 'only our keyboard stays; a mouse receiver found in a rear port', 1, 0),
  step(13, '11:09', 'Looked inside', 'no smell, no scorch, no leak, caps flat, card and its plug home', 5, 0),
  step(13, '11:14', 'Census', '12 photographs; slots A2 and B1 filled, the board’s print asks for A2 and B2', 5, 0),
  step(
    13,
    '11:19',
    'Start watched',
    'off after 21 s, on again after 3 s: seven times, then stays on, no picture',
    2,
    4,
  ),
  step(13, '11:25', 'Watts at the plug', 'off 1.3 W, starting up to 58 W, standing dark 37 W', 1, 1),
  step(13, '11:27', 'Signs of life', 'lock light does not follow the key, network light dark', 1, 1),
  step(13, '14:20', 'Drives unplugged', 'M.2 drive out, disk and optical drive unplugged: the same', 4, 2),
  step(13, '14:26', 'Start lights read', 'the light for memory stays', 1, 2),
  step(13, '14:29', 'Left alone', '10 minutes: nothing', 0, 10),
  step(13, '14:39', 'Module put right', 'second module from B1 to B2: cycles, dark', 3, 3),
  step(13, '14:45', 'One module', 'each of them alone in A2: a picture after 24 s', 6, 5),
  step(13, '14:56', 'Settings noted', 'five pages photographed; firmware 1407; clock right', 4, 1),
  step(13, '15:01', 'Settings to default', 'with the key in your hand; one module, then both: cycles, dark', 3, 4),
  step(13, '15:08', 'Rails measured', '12.11, 5.06, 3.32 V; standby 5.03 V; steady', 4, 0),
  step(13, '15:12', 'Each slot', 'our DIMM alone: A1 starts, A2 starts, B1 cycles, B2 cycles', 7, 8),
  step(13, '15:27', 'Cooler drawn evenly', 'crosswise in three rounds; B2 cycles', 4, 3),
  step(13, '15:34', 'Coils measured', '12 V inputs to ground 1.9 kΩ and rising', 3, 0),
  step(13, '15:37', 'Processor looked at', 'all socket contacts of one height, pads clean', 11, 0),
  step(13, '15:48', 'Processor of ours', 'A2 starts; B2 and B1 cycle', 10, 5),
  step(13, '16:12', 'Board on the rig', 'everything else ours: A1, A2 start 4 of 4; B1, B2 cycle 4 of 4', 34, 7),
  step(14, '09:13', 'Fitting', 'the other board in, everything of yours back', 43, 0),
  step(14, '09:56', 'First start', '16 GiB in two channels', 5, 2),
  step(14, '10:03', 'Memory pass', 'no errors', 2, 48),
  step(14, '10:53', 'Load', '71 °C after 20 minutes', 2, 20),
  step(14, '11:15', 'Drives in again', 'M.2 screw in, both SATA plugs home', 4, 0),
  step(14, '11:19', 'Drives’ own health', 'no warning', 2, 1),
  step(14, '11:22', 'Ports', 'every port at its speed', 5, 0),
  step(14, '11:27', 'Cleaning', 'filters, blades held still', 6, 0),
  step(14, '11:33', 'Cabling, panel on', 'air path free', 3, 0),
  step(14, '11:36', 'Cold starts', '5 of 5, at least 45 minutes off between', 5, 244),
];

const yours = { whose: 'owner' } as const;

export const returnReportFacts: ReturnReportFacts = {
  ...common('2026-0113', october(14, '15:47')),
  outcome: 'repaired',
  told: 'Since we moved house it stays dark. The fans turn, the screen says no signal. I pressed it again and again.',
  seen: [
    'It went off and on by itself seven times, then stayed on and dark. We told you on 13 October that this may cost more; you agreed to at most £150.00, and later to at most £260.00.',
  ],
  verdict: {
    is: 'confirmed',
    part: 'Your board',
    how: 'second-rig',
    detail: [
      'The first two memory slots started 4 times of 4; the other two never in 4. Processor, cooler, supply and both modules were ours, each proved there within the hour.',
      'Why it failed is not known.',
    ],
  },
  fitted: { what: 'another, not as good as yours', agreedHow: 'on the telephone' },
  allInPlace: false,
  readings: [
    {
      what: 'Supply, 12 V rail',
      value: 12.11,
      unit: 'V',
      atLeast: 11.4,
      atMost: 12.6,
      source:
        'Limit: design guide for ATX power supplies, DC voltage regulation table. Read with our meter, photograph 9.',
    },
    {
      what: 'Processor under load, 20 minutes',
      value: 71,
      unit: '°C',
      atMost: 85,
      source: 'Limit: our shop’s own. Read by the processor’s own sensor.',
    },
  ],
  parts: [
    {
      what: 'Board Aldermoor AM-B46',
      tag: 'A7YA4R7',
      mark: { whose: 'owner', state: 'dead' },
      whose: 'yours, failed',
      came: 'in it',
      goes: 'with us until 14 January 2027',
    },
    {
      what: 'Board Wrenfield WF-M2',
      tag: 'FTFM552',
      mark: { whose: 'shop' },
      whose: 'ours, sold',
      came: 'our wall',
      goes: 'in it, now yours',
    },
    { what: 'Module 1, 8 GB', mark: yours, whose: 'yours', came: 'slot A2', goes: 'slot A1' },
    { what: 'Module 2, 8 GB', mark: yours, whose: 'yours', came: 'slot B1', goes: 'slot B1' },
    { what: 'Processor and cooler', mark: yours, whose: 'yours', came: 'in it', goes: 'in it' },
    { what: 'Card, supply, three drives', mark: yours, whose: 'yours', came: 'in it', goes: 'in it' },
    {
      what: 'Mains cord, DisplayPort lead, mouse receiver',
      mark: yours,
      whose: 'yours',
      came: 'with it',
      goes: 'with it',
    },
  ],
  proofs: [
    { what: 'First start', result: '16 GiB in two channels, 2666 MT/s', limit: 'total and channels as it came' },
    { what: 'Memory, one whole pass', result: 'no errors', limit: 'no errors, 16 GiB' },
    { what: 'Full load, processor, 20 min', result: 'at most 71 °C, no slowing', limit: 'at most 85 °C, no shut-off' },
    { what: 'Drives’ own word', result: 'no warning; disk 6,214 hours', limit: 'no warning, no counted error' },
    { what: 'Ports', result: 'every one at its speed', limit: 'each answers' },
    { what: 'Cold starts', result: '5 of 5', limit: '5 of 5, 45 minutes off between' },
  ],
  byTheWay: [
    'One memory module sat in the wrong slot, as it already did in a report of March 2024. Put right; it was not the cause.',
  ],
  differences: ['Three screws and three standoffs are left over: bagged, yours.'],
  atFirstStart: ['Enter your recovery key once. The system may ask to be registered again.'],
  excluded: [
    { what: 'Power supply', why: 'every rail within its limits' },
    { what: 'Memory modules', why: 'each starts alone, and both run in the new board' },
    { what: 'Processor', why: 'with ours in its place the second channel was as dead' },
    { what: 'Contacts in the socket', why: 'in line under the lens, then another processor freshly seated' },
    { what: 'Cooler pressure', why: 'drawn crosswise, mounted anew, then our cooler: no change' },
  ],
  notExcluded: ['A fault that shows in fewer than one start of two could have stayed hidden in 1 of 32 cases.'],
  cost: {
    lines: [
      { what: 'Work, 192 minutes', amount: pounds(144) },
      { what: 'Board Wrenfield WF-M2, new', amount: pounds(89) },
      { what: 'Inside hub lead, fan lead', amount: pounds(13.5) },
    ],
    total: pounds(246.5),
    toldFrom: pounds(245),
    toldTo: pounds(260),
  },
  warranty: ['Work until 15 April 2027, board until 15 October 2028.'],
  log,
};

export const billFacts: BillFacts = {
  ...common('2026-0108', october(15, '17:25')),
  told: 'Since we moved house it stays dark.',
  done: [
    'Fault found: second memory channel of the board dead, confirmed on the second rig.',
    'Board replaced, module put into its right slot, cleaned, proved.',
  ],
  lines: [
    { is: 'work', minutes: minutes(192), rate: pounds(0.75), amount: pounds(144), tax: pounds(24) },
    { is: 'part', what: 'Board Wrenfield WF-M2', condition: 'new', amount: pounds(89), tax: pounds(14.83) },
    { is: 'part', what: 'Inside hub lead', condition: 'new', amount: pounds(7.5), tax: pounds(1.25) },
    { is: 'part', what: 'Fan lead, one to three', condition: 'new', amount: pounds(6), tax: pounds(1) },
  ],
  total: pounds(246.5),
  taxTotal: pounds(41.08),
  taxSays: '20 % contained in every line, rounded line by line.',
  limit: pounds(260),
  toldBefore: { from: pounds(245), to: pounds(260) },
  findingFee: { amount: pounds(30), credited: true },
  warranty: ['Work until 15 April 2027', 'Board until 15 October 2028'],
  workBy: ['Bram Ostler', 'Nessa Quill'],
};

export const replacedPartFacts: ReplacedPartFacts = {
  ...common('2026-0029', october(15, '17:22')),
  part: { what: 'Board Aldermoor AM-B46', tag: 'A7YA4R7' },
  verdict: { is: 'confirmed', how: 'on the second rig, 13 October 2026' },
  goes: { is: 'kept', until: epochMs(Date.parse('2027-01-14T12:00:00Z')), place: 'shelf K2' },
  word: {
    who: 'Judith Amberley',
    at: october(13, '17:16'),
    heardBy: 'Bram Ostler',
    given: { how: 'by-phone', phone: '07700 900 143' },
  },
  data: 'settings-cleared',
  signature: signedAt(october(15, '17:34')),
};

const { owner: _, ...labelCommon } = common('2026-0113', october(13, '09:47'));
export const benchTagFacts: BenchTagFacts = {
  ...labelCommon,
  acceptedAt: october(13, '09:47'),
  liftedBy: 1,
  things: 2,
};
export const partTagFacts: PartTagFacts = {
  ...labelCommon,
  number: '2026-0207',
  parts: [
    { tag: 'M39D6AD', what: 'M.2 drive 500 GB', whose: 'owner', from: 'slot M2_1' },
    { tag: 'A7YA4R7', what: 'Board Aldermoor AM-B46', whose: 'owner', state: 'suspect', from: 'the machine' },
    { tag: 'E6HW345', what: 'DIMM 8 GB DDR4-2666', whose: 'shop' },
  ],
};
