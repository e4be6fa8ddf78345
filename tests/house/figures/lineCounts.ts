import type { Source } from '../source.ts';

/** How long files are, in lines: the middle one, the one nine in ten do not pass (nearest rank), the longest. */
export type LineCounts = {
  readonly files: number;
  readonly median: number;
  readonly p90: number;
  readonly max: number;
};

export function lineCounts(sources: readonly Source[]): LineCounts {
  const lines = sources.map(({ text }) => text.replace(/\n$/, '').split('\n').length).sort((a, b) => a - b);
  const rank = (share: number) => lines[Math.max(0, Math.ceil(share * lines.length) - 1)] ?? 0;
  return { files: lines.length, median: rank(0.5), p90: rank(0.9), max: rank(1) };
}
