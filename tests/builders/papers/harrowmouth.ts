import words from '../../../assets/words/en/papers.json' with { type: 'json' };
import type { Currency, Money } from '../../../core/money/money.ts';
import type { InkStrokes } from '../../../core/papers/content.ts';
import type { CommonFacts, SignatureFacts } from '../../../core/papers/facts.ts';
import type { Setting } from '../../../core/papers/setting.ts';
import { type EpochMs, epochMs } from '../../../core/time.ts';

/** An invented shop and owner whose job stands on every paper. */
export const setting: Setting = {
  locale: 'en-GB',
  zone: 'Europe/London',
  pageSize: 'A4',
  words,
  minorDigits: (currency) => (currency === 'CLP' ? 0 : 2),
};

export const pounds = (amount: number): Money => ({ minor: Math.round(amount * 100), currency: 'GBP' as Currency });
/** October 2026, British Summer Time until the 25th. */
export const october = (day: number, clock: string): EpochMs =>
  epochMs(Date.parse(`2026-10-${String(day).padStart(2, '0')}T${clock}:00+01:00`));

export const common = (number: string, issuedAt: EpochMs): CommonFacts => ({
  number,
  issuedAt,
  headShort: '7f3a 9c12 e0b4',
  shop: {
    name: 'Tidewell & Ostler',
    address: ['14 Ropewalk', 'Harrowmouth'],
    phone: '01632 960 114',
  },
  owner: {
    name: 'Judith Amberley',
    address: ['3 Lantern Steps', 'Harrowmouth'],
    phone: '07700 900 143',
    mail: 'judith@amberley.example',
  },
  machine: {
    tag: 'F6C6KA5',
    what: 'Desktop PC, mid tower',
    maker: 'Fernhill Systems',
    model: 'C3',
    serial: 'not readable',
  },
});

/** A pen's curve, not anybody's. */
const strokes: InkStrokes = {
  width: 400,
  height: 110,
  strokes: [
    Array.from({ length: 90 }, (_, at) => {
      const t = at / 89;
      return [20 + 300 * t + 14 * Math.sin(t * 31), 62 - 34 * Math.sin(t * 25) * (1 - 0.6 * t) - 8 * t] as const;
    }),
    [[340, 80] as const],
    [[60, 92] as const, [250, 84] as const, [352, 88] as const],
  ],
};
export const signedAt = (at: EpochMs, who = 'Judith Amberley'): SignatureFacts => ({ who, at, drawn: strokes });
