import type { BenchTable } from '../types.ts';
import { type Finding, found, noFinding } from './finding.ts';

/** Watts at the plug, in watts: before the start is pressed, and after it; and how the figure behaves then. */
export type WattsReading = {
  readonly off: number | null;
  readonly started: number | null;
  /** `swings`: up and down again and again; `steady`: stays where it is for a minute; `lives`: moves as a start does. */
  readonly behaves: 'swings' | 'steady' | 'lives' | null;
};

/** What the plug meter comes to as a finding of `wall-watts`. Its bounds are the shop's own (`bench.json`): no source. */
export function wattsFinding(table: BenchTable, { off, started, behaves }: WattsReading): Finding {
  const { nothing, standbyRise, high } = table.watts;
  if (off === null || started === null) return noFinding('not-all-measured');
  const is = (outcome: string) => found('wall-watts', outcome);
  if (behaves === 'swings') return is('pulses');
  if (off < nothing && started < nothing) return is('nothing');
  if (started - off < standbyRise) return is('standby-only');
  if (behaves === null) return noFinding('not-all-measured');
  if (started > high) return is('high');
  return is(behaves === 'steady' ? 'stuck' : 'normal');
}
