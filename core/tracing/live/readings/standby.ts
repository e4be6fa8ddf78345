import { POWER_ON } from './editions.ts';
import { type Finding, found, noFinding } from './finding.ts';
import { judgeRail } from './rails.ts';

/** With mains on and the machine off: the standby rail, and the start line at rest and while the switch is pressed. */
export type StandbyReading = {
  readonly standby: number | null;
  readonly startAtRest: number | null;
  readonly startPressed: number | null;
};

/** The level of the start line (PS_ON#, active low): pulled down turns the supply on, open or high keeps it off. */
export function startLine(volts: number): 'asks-for-power' | 'rests' | 'between' | 'too-high' {
  if (volts <= POWER_ON.lowTo) return 'asks-for-power';
  if (volts < POWER_ON.highFrom) return 'between';
  return volts <= POWER_ON.openTo ? 'rests' : 'too-high';
}

/**
 * What the standby rail and the start line come to as a finding of `meas-standby`. A standby rail that is there proves
 * mains and that rail, nothing of the board. One that is too high is a rail outside, which belongs to `meas-rails`.
 */
export function standbyFinding(edition: string | null, reading: StandbyReading): Finding {
  const { standby, startAtRest, startPressed } = reading;
  if (standby === null) return noFinding('not-all-measured');
  const { verdict } = judgeRail(edition, { rail: '+5VSB', connector: 'board', volts: standby, atPeak: false });
  if (verdict === 'at-the-edge') return noFinding('at-the-edge');
  if (verdict === 'no-limit') return noFinding('no-limit');
  if (verdict === 'outside' && standby > NOMINAL) return found('meas-rails', 'outside');
  if (verdict !== 'within') return found('meas-standby', standby < GONE ? 'no-standby' : 'low');
  if (startAtRest === null) return noFinding('not-all-measured');
  if (startLine(startAtRest) === 'asks-for-power') return found('meas-standby', 'switch-stuck');
  if (startPressed === null) return noFinding('not-all-measured');
  return startLine(startPressed) === 'asks-for-power'
    ? found('meas-standby', 'within')
    : found('meas-standby', 'switch-dead');
}

/** Volts of the standby rail (+5VSB of the ATX supply design guide). */
const NOMINAL = 5;
/** Volts: a standby rail below this is none: common practice, no source. */
const GONE = 1;
