import { lendsOurs, type Sentence } from '../breach.ts';
import { agreedTo } from '../state.ts';
import type { Doing } from '../stepTable.ts';

type Consent = { readonly consent: string; readonly says: string; readonly doings: readonly Doing[] };

/** What needs the owner's word, by the sheet that the owner signs. */
const CONSENTS: readonly Consent[] = [
  {
    consent: 'open',
    says: 'Nobody said that it may be opened and worked on inside.',
    doings: ['opens', 'card-out', 'cooler-off', 'processor-out', 'board-out'],
  },
  { consent: 'start-own', says: 'Nobody said that their own system may be started.', doings: ['their-system'] },
  { consent: 'read', says: 'Nobody said that their data and log may be looked at.', doings: ['reads-data'] },
  { consent: 'copy', says: 'Nobody said that their data may be copied.', doings: ['copies'] },
  { consent: 'write', says: 'Nobody said that files or settings of their system may be changed.', doings: ['writes'] },
  { consent: 'order-to-try', says: 'Nobody said that a part may be ordered to try.', doings: ['orders'] },
  { consent: 'send-out', says: 'Nobody said that a part of theirs may leave the house.', doings: ['sends'] },
];

/** What is done only with the owner's word. */
export const WORD: readonly Sentence[] = [
  ...CONSENTS.map(
    ({ consent, says, doings }): Sentence => ({
      rule: `word-${consent}`,
      says,
      harm: (state, { does }) => (does(...doings) && !agreedTo(state, consent) ? 'word' : null),
    }),
  ),
  {
    rule: 'word-own-parts-in',
    says: 'Nobody said that parts of ours may go into it.',
    harm: (state, deed) => (lendsOurs(deed) && !agreedTo(state, 'own-parts-in') ? 'word' : null),
  },
];
