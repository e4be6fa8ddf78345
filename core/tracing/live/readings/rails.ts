import {
  ABSENT_SOURCE,
  type Connector,
  type Edition,
  editionsMeant,
  NOTHING_BELOW,
  type Rail,
  type RailLimit,
} from './editions.ts';
import { type Finding, found, noFinding } from './finding.ts';

/** One rail as measured. `volts` null: there is no such wire. */
export type RailReading = {
  readonly rail: Rail;
  readonly connector: Connector;
  readonly volts: number | null;
  /** Measured while the rail carries its peak load. */
  readonly atPeak: boolean;
};

export type RailVerdict = {
  readonly verdict: 'within' | 'outside' | 'at-the-edge' | 'no-limit' | 'need-not-be-there';
  /** The limit it was held against, as printed; null where there is none, or editions differ. */
  readonly limit: RailLimit | null;
  readonly source: string | null;
};

/** A thousandth of a volt counts; less is the noise of binary fractions. */
const FINEST = 1e-6;

/**
 * Holds one rail against the limits of the supply's edition (id, or null for unknown) at the connector it was measured
 * at. The printed limits rule; a reading that only the per cent behind them allows is `at-the-edge`. Of an unknown
 * edition it is said only what all editions that have the rail agree on.
 */
export function judgeRail(edition: string | null, reading: RailReading): RailVerdict {
  const all = editionsMeant(edition).map((one) => judgeIn(one, reading));
  // An edition that has no such rail has no say on what it carries.
  const verdicts = all.some((one) => one.verdict !== 'no-limit')
    ? all.filter((one) => one.verdict !== 'no-limit')
    : all;
  const [first] = verdicts;
  if (first && verdicts.every((one) => one.verdict === first.verdict))
    return verdicts.length === 1 ? first : { ...first, limit: null };
  return { verdict: 'no-limit', limit: null, source: null };
}

function judgeIn(edition: Edition, { rail, connector, volts, atPeak }: RailReading): RailVerdict {
  const limit = limitOf(edition, rail, connector, atPeak);
  const isThere = volts !== null && Math.abs(volts) >= NOTHING_BELOW;
  if (!isThere && (edition.absent.includes(rail) || limit?.optional))
    return { verdict: 'need-not-be-there', limit: null, source: ABSENT_SOURCE };
  if (!limit) return { verdict: 'no-limit', limit: null, source: null };
  const { source } = limit;
  if (!isThere) return { verdict: 'outside', limit, source };
  const { low, high, nominal, percent } = limit;
  if (volts >= low - FINEST && volts <= high + FINEST) return { verdict: 'within', limit, source };
  const size = Math.abs(nominal) / 100;
  // The first per cent is towards less magnitude: of a negative rail that is its upper limit.
  const [weak, strong] = percent;
  const magnitude = volts * Math.sign(nominal);
  const isBehind =
    magnitude >= Math.abs(nominal) - weak * size - FINEST && magnitude <= Math.abs(nominal) + strong * size + FINEST;
  return { verdict: isBehind ? 'at-the-edge' : 'outside', limit, source };
}

/** The narrowest description that fits: this connector at peak, this connector, any. */
function limitOf(edition: Edition, rail: Rail, connector: Connector, atPeak: boolean): RailLimit | null {
  const fitting = edition.rails.filter(
    (limit) =>
      limit.rail === rail &&
      (limit.connector === undefined || limit.connector === connector) &&
      (limit.atPeak !== true || atPeak),
  );
  const told = (limit: RailLimit) => (limit.atPeak ? 2 : 0) + (limit.connector ? 1 : 0);
  return fitting.toSorted((a, b) => told(b) - told(a))[0] ?? null;
}

/** Power-good as measured: its delay in ms after the rails stand; null: it never came. */
export type PowerGood = { readonly delayMs: number | null };

/** Is the delay of power-good as the edition asks? Of an unknown edition: only what all agree on. */
export function judgePowerGood(
  edition: string | null,
  { delayMs }: PowerGood,
): { readonly verdict: 'within' | 'outside' | 'no-limit'; readonly limit: Edition['powerGood'] } {
  const limits = editionsMeant(edition).map((one) => one.powerGood);
  const verdicts = limits.map((limit) =>
    delayMs === null
      ? 'outside'
      : limit === null
        ? 'no-limit'
        : delayMs >= limit.fromMs && delayMs <= limit.toMs
          ? 'within'
          : 'outside',
  );
  const [first] = verdicts;
  const isAgreed = first !== undefined && verdicts.every((one) => one === first);
  return { verdict: isAgreed ? first : 'no-limit', limit: limits.length === 1 ? (limits[0] ?? null) : null };
}

/** The rails that must have been measured before all is said to be well. */
const MAIN = ['+12V', '+5V', '+3.3V'] as const;

/** What rails and power-good, measured while the machine is on, come to as a finding of `meas-rails`. */
export function railsFinding(
  edition: string | null,
  readings: readonly RailReading[],
  powerGood: PowerGood | null,
): Finding {
  const verdicts = readings.map((reading) => ({ ...reading, ...judgeRail(edition, reading) }));
  const good = powerGood && judgePowerGood(edition, powerGood).verdict;
  if (verdicts.some(({ verdict }) => verdict === 'outside')) return found('meas-rails', 'outside');
  if (good === 'outside') return found('meas-rails', 'no-power-good');
  if (verdicts.some(({ verdict }) => verdict === 'at-the-edge')) return noFinding('at-the-edge');
  if (good === 'no-limit' || verdicts.some(({ verdict }) => verdict === 'no-limit')) return noFinding('no-limit');
  const measured = verdicts.filter(({ verdict }) => verdict === 'within' || verdict === 'need-not-be-there');
  const lacking = MAIN.some(
    (rail) =>
      !measured.some((one) => one.rail === rail) && editionsMeant(edition).some((one) => !one.absent.includes(rail)),
  );
  return lacking || good === null ? noFinding('not-all-measured') : found('meas-rails', 'within');
}
