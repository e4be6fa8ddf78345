import type { OverTruths } from './overTruths.ts';

export type Bar = { readonly name: string; readonly minutes: OverTruths };

const ROW = 44;
const LEFT = 250;
const WIDE = 520;
const TOP = 64;
const RIGHT = 90;

/** Hands-on minutes by way of working as an SVG: a bar each, with the 95 % interval over truths drawn across its end. */
export function minutesPlot(title: string, bars: readonly Bar[]): string {
  const reach = (bar: Bar) => bar.minutes.middle + (Number.isFinite(bar.minutes.half) ? bar.minutes.half : 0);
  const step = tickStep(Math.max(...bars.map(reach)));
  const most = step * Math.ceil(Math.max(...bars.map(reach)) / step);
  const x = (minutes: number): number => LEFT + (WIDE * Math.max(0, minutes)) / most;
  const bottom = TOP + bars.length * ROW;
  const ticks = Array.from({ length: Math.round(most / step) + 1 }, (_, i) => i * step);
  const say = (value: number): string => value.toFixed(1);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${LEFT + WIDE + RIGHT} ${bottom + 60}" font-family="sans-serif" font-size="16" role="img">`,
    `<title>${escaped(title)}</title>`,
    '<rect width="100%" height="100%" fill="#fff"/>',
    `<text x="16" y="30" font-size="18" font-weight="bold" fill="#111">${escaped(title)}</text>`,
    ...ticks.flatMap((tick) => [
      `<line x1="${say(x(tick))}" y1="${TOP - 8}" x2="${say(x(tick))}" y2="${bottom}" stroke="#ccc"/>`,
      `<text x="${say(x(tick))}" y="${bottom + 22}" text-anchor="middle" fill="#333">${tick}</text>`,
    ]),
    `<text x="${LEFT}" y="${bottom + 48}" fill="#333">mean minutes per machine; lines: 95 % interval over truths</text>`,
    ...bars.flatMap(({ name, minutes: { middle, half } }, i) => {
      const y = TOP + i * ROW;
      const across = y + ROW / 2 - 4;
      const ends = Number.isFinite(half) ? [x(middle - half), x(middle + half)].map(say) : null;
      return [
        `<text x="${LEFT - 12}" y="${across + 6}" text-anchor="end" fill="#111">${escaped(name)}</text>`,
        `<rect x="${LEFT}" y="${y}" width="${say(x(middle) - LEFT)}" height="${ROW - 8}" fill="#2b6c8f"/>`,
        ends
          ? `<line x1="${ends[0]}" y1="${across}" x2="${ends[1]}" y2="${across}" stroke="#111" stroke-width="3"/>`
          : '',
        `<text x="${say(x(reach({ name, minutes: { middle, half } })) + 10)}" y="${across + 6}" fill="#111">${say(middle)}</text>`,
      ];
    }),
    '</svg>',
    '',
  ].join('\n');
}

/** 1, 2 or 5 times a power of ten, for at most eight ticks. */
function tickStep(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most / 8));
  return [1, 2, 5, 10].map((times) => times * power).find((step) => most / step <= 8) ?? 10 * power;
}

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;');
