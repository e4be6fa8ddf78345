import type { Sentence } from '../breach.ts';
import { agreedTo, chance, changed, complained, logged, newest, type RefereeState } from '../state.ts';
import { memoryDoubted, memoryPassed } from './drive.ts';

const UNSTEADY = [
  ...['freezes', 'restarts-in-use', 'shuts-off', 'shuts-off-load', 'error-in-use', 'restarts-itself'],
  ...['off-after-seconds', 'starts-after-tries', 'twitch-off', 'click-no-start', 'trips-breaker'],
];
const FAILED = [
  ...['log-read:power-loss', 'log-read:memory-error', 'load-cpu:stops', 'load-card:stops', 'load-both:stops'],
  ...['load-long:stops', 'rails-log:sags', 'soak-idle:failed', 'meas-rails:trips', 'meas-rails:outside'],
];
const POWER_LOST = [
  ...['shuts-off', 'shuts-off-load', 'off-after-seconds', 'restarts-itself', 'twitch-off', 'click-no-start'],
  'starts-after-tries',
];
/** It runs, and fails while it runs: no button writes more safely than set-up does. */
const FAILS_IN_USE = ['freezes', 'restarts-in-use', 'shuts-off', 'shuts-off-load', 'error-in-use'];
const STOPS_STARTING = ['error-at-start', 'no-boot-device', 'repair-loop', 'setup-each-time', 'drive-missing'];

/** Whether it may go off or freeze in the middle of a write. */
const unsteady = (state: RefereeState) =>
  complained(state, ...UNSTEADY) ||
  logged(state, ...FAILED) ||
  memoryDoubted(state) ||
  chance(state, (fault) => /^(dimm|cpu|psu)-|^mains-poor$/.test(fault)) >= 0.1;

/** Whether the disk is or may be encrypted, and there is neither its key nor the owner's signature for the risk. */
export const lockable = (state: RefereeState): boolean =>
  (state.machine.encrypted === 'yes' || state.machine.encrypted === 'unknown') &&
  state.machine.keyInHand !== true &&
  !logged(state, 'ask-key:key', 'ask-key:risk-signed', 'key-enter:works') &&
  !agreedTo(state, 'risk-key');

/** Whether set-up was photographed, or the owner said that what cannot be seen may go. */
const settingsKept = (state: RefereeState) => logged(state, 'setup-notes', 'ask-owner:yes', 'ask-risk:yes');

/** Whether the cell is flat, by the meter or by all that was told. */
const cellFlat = (state: RefereeState) =>
  newest(state, 'cell-measure:good', 'cell-new') < 0 &&
  (logged(state, 'cell-measure:flat') || complained(state, 'settings-lost', 'setup-each-time'));

/** What board, firmware and settings must be kept from. */
export const BOARD: readonly Sentence[] = [
  {
    rule: 'firmware-on-unsteady',
    says: 'It may freeze or go off: no firmware is written before memory has passed and the rails are within.',
    harm: (state, { does }) =>
      (does('firmware') || (does('firmware-rescue') && (memoryDoubted(state) || complained(state, ...FAILS_IN_USE)))) &&
      unsteady(state) &&
      !(memoryPassed(state) && logged(state, 'meas-rails:within'))
        ? 'machine'
        : null,
  },
  {
    rule: 'rescue-on-bad-power',
    says: 'It loses its power: no firmware is written, by button either, before the rails are within.',
    harm: (state, { does }) =>
      does('firmware-rescue') &&
      (complained(state, ...POWER_LOST) ||
        logged(state, 'log-read:power-loss', 'meas-rails:outside', 'meas-rails:trips')) &&
      newest(state, 'meas-rails:within', 'supply-cleared:within') <=
        newest(state, 'log-read:power-loss', 'meas-rails:outside', 'meas-rails:trips')
        ? 'machine'
        : null,
  },
  {
    rule: 'key-first',
    says: 'The disk asks for its key: the key is entered before a setting is cleared or anything is written.',
    harm: (state, { does }) =>
      complained(state, 'asks-key') &&
      !logged(state, 'key-enter:works', 'ask-key:risk-signed') &&
      (does('clears') || (does('writes') && !logged(state, 'ask-key:key')))
        ? 'data'
        : null,
  },
  {
    rule: 'array-noted-first',
    says: 'Its drives are an array: set-up is photographed before it is cleared, and set right before anything is written.',
    harm: (state, { does }) =>
      (state.machine.array ?? 0) > 1 &&
      ((does('clears') && !settingsKept(state)) ||
        (does('writes') && complained(state, ...STOPS_STARTING) && !logged(state, 'setup-notes', 'boot-first')))
        ? 'data'
        : null,
  },
  {
    rule: 'mode-before-repair',
    says: 'It stops at the start since a firmware update: see set-up’s drive mode before a system is repaired.',
    harm: (state, { does }) =>
      changed(state, 'fw-update') &&
      complained(state, ...STOPS_STARTING) &&
      !logged(state, 'setup-notes', 'boot-first') &&
      does('writes-over')
        ? 'data'
        : null,
  },
  {
    rule: 'cleared-while-locked',
    says: 'The disk is or may be encrypted and no key is in hand: no clear, no defaults, no new cell, no firmware.',
    harm: (state, { does }) => (lockable(state) && does('clears') ? 'data' : null),
  },
  {
    rule: 'written-while-locked',
    says: 'The disk is or may be encrypted and no key is in hand: nothing is written to it.',
    harm: (state, { does }) => (lockable(state) && does('writes') ? 'data' : null),
  },
  {
    rule: 'foreign-board-while-locked',
    says: 'The disk may be encrypted and no key is in hand: another processor or board only with the drives off.',
    harm: (state, { does }) =>
      lockable(state) && does('foreign-board') && !logged(state, 'drives-off') ? 'data' : null,
  },
  {
    rule: 'mains-off-on-flat-cell',
    says: 'The cell is flat: mains off is a clear, so the set-up is photographed first where it holds a key or an array.',
    harm: (state, { does }) =>
      cellFlat(state) &&
      logged(state, 'watch-start') &&
      !settingsKept(state) &&
      (lockable(state) || (state.machine.array ?? 0) > 1) &&
      does('pulls-mains')
        ? 'data'
        : null,
  },
];
