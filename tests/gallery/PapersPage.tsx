import { useState } from 'react';
import type { Sheet } from '../../core/papers/content.ts';
import type { EpochMs } from '../../core/time.ts';
import { PaperView } from '../../renderer/kit/paper/PaperView.tsx';
import { type SignatureMark, SignaturePad } from '../../renderer/kit/paper/SignaturePad.tsx';
import { Pane } from '../../renderer/kit/shell/Pane.tsx';
import { RoomShell } from '../../renderer/kit/shell/RoomShell.tsx';
import { ROOMS } from './rooms.ts';
import './bench.css';

const PAPER: Sheet = {
  shape: 'sheet',
  kind: 'return-report',
  number: '2026-0113',
  language: 'en-GB',
  title: 'What we found and did',
  issuedAt: Date.UTC(2026, 9, 14, 15) as EpochMs,
  headShort: '7f3a 9c12 e0b4',
  contentHash: null,
  shopName: 'Tidewell & Ostler',
  pageSize: 'A4',
  head: {
    meta: [
      'Return report 2026-0113, 14 October 2026',
      [{ text: 'Judith Amberley, machine ' }, { text: 'F6C 6KA 5', tag: true }],
    ],
    shop: ['Tidewell & Ostler', '14 Ropewalk', 'Harrowmouth'],
    qr: { text: 'F6C6KA5', says: 'Code of machine F6C 6KA 5' },
  },
  supersedes: null,
  lead: 'Your computer starts again. Half of its board no longer reached the memory. We put in another one, a lesser one, as you agreed on the telephone.',
  body: [
    {
      label: 'You told us',
      blocks: [{ block: 'paragraph', text: '“Since we moved house it stays dark. The fans turn.”' }],
    },
    {
      label: 'How we know',
      blocks: [
        {
          block: 'paragraph',
          text: [
            { text: 'Confirmed on the second rig. ', strong: true },
            { text: 'Everything but the board was ours.' },
          ],
        },
        {
          block: 'ruler',
          from: 11,
          to: 13,
          ticks: [11, 11.5, 12, 12.5, 13].map((at) =>
            at % 1 === 0 ? { at, label: String(at) } : { at, half: true as const },
          ),
          spans: [{ kind: 'allowed', from: 11.4, to: 12.6, label: 'allowed: 11.40 to 12.60 V' }],
          points: [{ kind: 'reading', at: 12.11, label: '' }],
          says: '12 volt rail 12.11 V, allowed 11.40 to 12.60 V',
          source: 'Limit: design guide for ATX power supplies.',
        },
      ],
    },
    {
      label: 'Whose parts went where',
      blocks: [
        {
          block: 'table',
          summary: 'Parts',
          marks: true,
          columns: [
            { head: 'Part', share: 3 },
            { head: 'Came', share: 2 },
            { head: 'Goes home', share: 2 },
          ],
          rows: [
            {
              mark: { whose: 'owner', state: 'dead', says: "owner's, dead" },
              cells: ['Board, ATX', 'in it, failing', 'kept by us'],
            },
            { mark: { whose: 'shop', says: 'the shop’s' }, cells: ['Board, microATX', 'ours', 'in it, now yours'] },
            {
              mark: { whose: 'owner', says: "owner's" },
              cells: ['Two DIMMs, 8 GB', 'slots A2 and B1', 'slots A1 and B1'],
            },
          ],
        },
      ],
    },
    {
      label: 'Your answers',
      blocks: [
        {
          block: 'consents',
          summary: 'Consents',
          columns: ['asked', 'answer'],
          lines: [
            { asks: 'Open it and work on it', answered: true, answerSays: [{ text: 'yes', strong: true }] },
            {
              asks: 'Film the work and show it',
              answered: false,
              answerSays: [{ text: 'unanswered, so ' }, { text: 'no', strong: true }],
            },
          ],
        },
      ],
    },
    {
      label: 'The part on offer',
      wide: true,
      blocks: [
        {
          block: 'comparison',
          summary: 'Yours beside the one on offer',
          columns: ['', 'Yours', 'On offer', 'worse   better', ''],
          rows: [
            {
              attribute: 'DIMM slots',
              yours: '4',
              offered: '2',
              verdict: 'worse',
              verdictSays: [{ text: 'worse', strong: true }, { text: ', both filled by yours' }],
            },
            { attribute: 'Radio', yours: 'none', offered: '802.11ac', verdict: 'better', verdictSays: 'better' },
            {
              attribute: 'Sound chip',
              yours: 'A',
              offered: 'B',
              verdict: 'cannot-be-compared',
              verdictSays: 'cannot be compared',
            },
          ],
        },
        {
          block: 'answers',
          ticks: { open: 'not ticked', chosen: 'ticked' },
          answers: [
            { title: 'This one, today', figure: '£89', lines: ['new, from our wall'], chosen: true },
            { title: 'One like yours', figure: '£140', lines: ['used, 9 to 12 days'], chosen: false },
            { title: 'None', figure: '£30', lines: ['home as it came'], chosen: false },
          ],
        },
      ],
    },
    {
      label: 'What it cost',
      blocks: [
        {
          block: 'amounts',
          summary: 'Costs',
          rows: [
            { what: 'Labour, 192 min', amount: '£144.00' },
            { what: 'Together, tax in it', amount: '£246.50', total: true },
          ],
        },
      ],
    },
  ],
  signing: { on: 'page-one', line: { block: 'signing', lines: ['Collected by, name', 'Date and time', 'Signature'] } },
  record: null,
  foot: {
    pages: 'Page {page} of {pages}',
    note: 'The full record follows.',
    record: 'Record 7f3a 9c12 e0b4',
    content: '',
  },
};

export function PapersPage() {
  const [mark, setMark] = useState<SignatureMark | null>(null);
  return (
    <RoomShell rooms={ROOMS} here="counter" open={<h1>Going home</h1>}>
      <div className="g-two">
        <Pane on="sheet" line="right">
          <SignaturePad
            label="Collected by Judith Amberley, over the report and the hand-over list"
            value={mark}
            onChange={setMark}
          />
          <output data-strokes={mark?.by === 'hand' ? mark.strokes.strokes.length : 0} />
        </Pane>
        <Pane on="soft">
          <PaperView paper={PAPER} writing="Your answers" />
        </Pane>
      </div>
    </RoomShell>
  );
}
