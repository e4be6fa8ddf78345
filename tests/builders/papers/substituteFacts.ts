import type { SubstituteDisclosureFacts } from '../../../core/papers/builders/substituteDisclosure.ts';
import { minutes } from '../../../core/time.ts';
import { common, october, pounds } from './harrowmouth.ts';

export const substituteFacts: SubstituteDisclosureFacts = {
  ...common('2026-0041', october(13, '17:02')),
  part: { what: 'Your board', verdict: 'confirmed' },
  offered: { name: 'Board Wrenfield WF-M2', condition: 'new', price: pounds(89), warranty: '24 months, ours' },
  whyNotSame:
    'Yours is no longer made. One used board of the same type can be had in 9 to 12 days, its past unknown; an equal one takes 6 working days.',
  rows: [
    { attribute: 'Form factor', yours: 'ATX', offered: 'microATX', verdict: 'worse', note: 'fits your case' },
    { attribute: 'Socket', yours: 'LGA1200', offered: 'LGA1200', verdict: 'equal' },
    {
      attribute: 'DIMM slots, most memory',
      yours: '4, 128 GiB',
      offered: '2, 64 GiB',
      verdict: 'worse',
      note: 'yours fill both',
    },
    { attribute: 'Memory kind and speed', yours: 'DDR4, 2666', offered: 'DDR4, 2666', verdict: 'equal' },
    { attribute: 'Slot for your card', yours: 'PCIe 3.0 x16', offered: 'PCIe 3.0 x16', verdict: 'equal' },
    { attribute: 'Further card slots', yours: '3', offered: '1', verdict: 'worse', note: 'you use none' },
    { attribute: 'M.2 for drives', yours: '2', offered: '1', verdict: 'worse', note: 'you use one' },
    { attribute: 'SATA', yours: '6', offered: '4', verdict: 'worse', note: 'you use two' },
    {
      attribute: 'USB at the back',
      yours: '8, two at 10 Gbit/s',
      offered: '6, none at 10',
      verdict: 'worse',
      note: 'no USB-C',
    },
    {
      attribute: 'USB for the front',
      yours: '1 and 2 plugs',
      offered: '1 and 1',
      verdict: 'worse',
      note: 'needs a hub lead',
    },
    { attribute: 'Network', yours: '2.5 Gbit/s', offered: '1 Gbit/s', verdict: 'worse', note: 'your line is slower' },
    { attribute: 'Radio', yours: 'none', offered: '802.11ac, Bluetooth', verdict: 'better', note: 'aerials with it' },
    {
      attribute: 'Own picture outputs',
      yours: 'HDMI, DisplayPort',
      offered: 'HDMI',
      verdict: 'worse',
      note: 'you use the card’s',
    },
    { attribute: 'Sound', yours: '5 and optical', offered: '3 sockets', verdict: 'worse', note: 'no optical' },
    { attribute: 'Fan plugs', yours: '5', offered: '2', verdict: 'worse', note: 'needs a lead' },
    { attribute: 'Start lights', yours: '4', offered: 'none', verdict: 'worse', note: 'matters to us only' },
    { attribute: 'Regulator, sound chip', yours: '8 phases', offered: '6 phases', verdict: 'cannot-be-compared' },
    { attribute: 'Store for the key', yours: 'present', offered: 'present, empty', verdict: 'equal' },
    { attribute: 'Condition, warranty', yours: 'used, none', offered: 'new, 24 months', verdict: 'better' },
  ],
  notice: 'Nothing in daily work. Fewer sockets at the back, and none of them USB-C.',
  afterwards: [
    { says: 'Enter the recovery key once, at the first start; you do it at our counter', minutes: minutes(3) },
    { says: 'The system may ask to be registered again', minutes: minutes(10), price: pounds(7.5) },
  ],
  extras: [
    { what: 'Inside hub lead, for the card reader', amount: pounds(7.5) },
    { what: 'Fan lead, one to three', amount: pounds(6) },
  ],
  options: [
    { title: 'This one', figure: pounds(89), lines: ['new, here today', 'ready on Thursday'] },
    { title: 'An equal one', figure: pounds(142), lines: ['new, equal in every point', 'ready about 23 October'] },
    { title: 'None', figure: pounds(30), lines: ['finding the fault only', 'home as it came'] },
  ],
  totals:
    'With work and leads, the first comes to about £245.00. Your limit is £150.00 now; your answer sets the new one.',
  oldPart: [{ text: 'back to me' }, { text: 'recycle it' }, { text: 'you may keep it to learn from' }],
  validUntil: october(14, '12:00'),
  without: 'It then goes home as it came, and you pay for finding the fault only.',
};
