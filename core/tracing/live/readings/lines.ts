import type { Connector, Rail } from './editions.ts';
import { judgePowerGood, judgeRail, type PowerGood, type RailReading } from './rails.ts';

/** One reading with what it was held against: figures and names only; words and number forms are the asker's. */
export type ReadingLine = {
  readonly what:
    | { readonly is: 'rail'; readonly rail: Rail; readonly connector: Connector }
    | { readonly is: 'power-good' };
  /** Null: it is not there, or never came. */
  readonly value: number | null;
  readonly unit: 'V' | 'ms';
  readonly from: number | null;
  readonly to: number | null;
  readonly source: string | null;
  readonly within: boolean | null;
};

/** Rails and power-good, line by line, as they are kept beside the finding. */
export function railLines(
  edition: string | null,
  readings: readonly RailReading[],
  powerGood: PowerGood | null,
): readonly ReadingLine[] {
  const rails = readings.map((reading): ReadingLine => {
    const { verdict, limit, source } = judgeRail(edition, reading);
    const { rail, connector, volts } = reading;
    return {
      what: { is: 'rail', rail, connector },
      value: volts,
      unit: 'V',
      from: limit?.low ?? null,
      to: limit?.high ?? null,
      source,
      within: verdict === 'no-limit' ? null : verdict === 'within' || verdict === 'need-not-be-there',
    };
  });
  if (!powerGood) return rails;
  const { verdict, limit } = judgePowerGood(edition, powerGood);
  return [
    ...rails,
    {
      what: { is: 'power-good' },
      value: powerGood.delayMs,
      unit: 'ms',
      from: limit?.fromMs ?? null,
      to: limit?.toMs ?? null,
      source: limit?.source ?? null,
      within: verdict === 'no-limit' ? null : verdict === 'within',
    },
  ];
}
