import type { Money } from '../money/money.ts';
import type { Ruler, Text } from './content.ts';
import type { EstimateFacts } from './facts.ts';
import type { Format } from './format.ts';
import type { Setting } from './setting.ts';

/** A length that a person can count in, in the unit of the span: the number of 1, 2 or 5 times a power of ten. */
export function countableStep(span: number, atMost: number): number {
  const rough = span / atMost;
  const power = 10 ** Math.floor(Math.log10(rough));
  const fits = [1, 2, 5, 10].find((factor) => factor * power >= rough * (1 - 1e-9)) ?? 10;
  return fits * power;
}

/** A scale from a round figure below to a round one above, long ticks labelled, half-way ticks between. */
export function scale(low: number, high: number, label: (at: number) => string): Pick<Ruler, 'from' | 'to' | 'ticks'> {
  const step = countableStep(high - low || Math.abs(high) || 1, 8);
  const first = Math.floor(low / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(high / step - 1e-9));
  const ticks: { at: number; label?: string; half?: true }[] = [];
  for (let count = first; count <= last; count++) {
    const at = tidy(count * step);
    ticks.push({ at, label: label(at) });
    if (count < last) ticks.push({ at: tidy((count + 0.5) * step), half: true });
  }
  return { from: tidy(first * step), to: tidy(last * step), ticks };
}

/** Takes off what binary fractions leave behind (0.30000000000000004), so that the content stays readable. */
const tidy = (value: number) => Number(value.toPrecision(12));

/** Price ruler: thick where eight in ten lie, a point at the middle, the limit as a line. */
export function moneyRuler(
  price: EstimateFacts['price'],
  limit: Money | undefined,
  /** What the limit is called: `your limit {amount}`. */
  limitSays: string,
  setting: Setting,
  format: Format,
): Ruler {
  const { common } = setting.words;
  const perMajor = 10 ** setting.minorDigits(price.p50.currency);
  const major = (of: Money) => of.minor / perMajor;
  const likely = format.say(common.likelyBetween, { from: format.money(price.p10), to: format.money(price.p90) });
  const limitIs = limit && format.say(limitSays, { amount: format.money(limit) });
  return {
    block: 'ruler',
    ...scale(0, Math.max(major(price.p90), limit ? major(limit) : 0) * 1.02, (at) => format.number(at)),
    spans: [{ kind: 'likely', from: major(price.p10), to: major(price.p90), label: likely }],
    points: limit && limitIs ? [{ kind: 'limit', at: major(limit), label: limitIs }] : [],
    says: format.say(common.moneyScale, { says: [likely, limitIs].filter(Boolean).join('; ') }),
  };
}

/** A reading on its scale, with what is allowed. Limits may be open at one side. */
export type ReadingFacts = {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly atLeast?: number;
  readonly atMost?: number;
  /** Where the limit comes from, and with what it was read. */
  readonly source?: Text;
};

/** A reading drawn on a ruler between the limits it must keep, in the reading's own unit. */
export function readingRuler(
  reading: ReadingFacts,
  format: Format,
  words: { allowed: string; yours: string; says: string },
): Ruler {
  const { value, atLeast, atMost } = reading;
  const known = [value, ...[atLeast, atMost].filter((end) => end !== undefined)];
  const low = Math.min(...known);
  const high = Math.max(...known);
  const room = (high - low) * 0.15 || Math.abs(high) * 0.1 || 1;
  // A scale that starts near zero starts at zero: lengths on it can then be compared.
  const from = low - room < (high - low) * 0.3 && low >= 0 ? 0 : low - room;
  const drawn = scale(from, high + room, (at) => format.number(at));
  return {
    block: 'ruler',
    ...drawn,
    spans: [
      {
        kind: 'allowed',
        from: atLeast ?? drawn.from,
        to: atMost ?? drawn.to,
        ...(atLeast === undefined
          ? { open: 'below' as const }
          : atMost === undefined
            ? { open: 'above' as const }
            : {}),
        label: words.allowed,
      },
    ],
    points: [{ kind: 'reading', at: value, label: words.yours }],
    says: words.says,
    ...(reading.source === undefined ? {} : { source: reading.source }),
  };
}
