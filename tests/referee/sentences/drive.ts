import { type Sentence, spinsDrive, switchesOn } from '../breach.ts';
import { agreedTo, complained, logged, newest, type RefereeState, stands } from '../state.ts';

const FAILING = [
  'drive-health:warning',
  'drive-dock:errors',
  'drive-read:errors',
  'drive-read:stalls',
  'log-read:disk-error',
];

/** What says that a drive can be read. */
const READ_WELL = ['drive-health:clean', 'drive-dock:reads', 'drive-read:clean'];

/** Whether the drive is said or seen to fail. */
const fails = (state: RefereeState) =>
  complained(state, 'drive-clicks', 'drive-warning') ||
  logged(state, ...FAILING) ||
  (complained(state, 'stuck-logo', 'stuck-loading') &&
    logged(state, 'drives-off:works', 'drive-each:another', 'drive-each:systems'));

/** Whether as much as can be had was copied, or a laboratory has it; or the owner wants no copy. */
const copyDone = (state: RefereeState) => logged(state, 'drive-image', 'drive-clone', 'drive-lab:agreed');
const noCopyWanted = (state: RefereeState) => !agreedTo(state, 'copy') && !complained(state, 'data-wanted');
const atStake = (state: RefereeState) => !copyDone(state) && !noCopyWanted(state);

/** What a drive that is failing, or that somebody has locked for money, must be kept from. */
export const DRIVE: readonly Sentence[] = [
  {
    rule: 'clicking-drive-spins',
    says: 'The drive clicks: it spins for its copy and for nothing else.',
    harm: (state, deed) => (complained(state, 'drive-clicks') && atStake(state) && spinsDrive(deed) ? 'data' : null),
  },
  {
    rule: 'new-supply-old-leads',
    says: 'It twitches since a new supply with leads that plug in: no drive spins before those leads were looked at.',
    harm: (state, deed) =>
      (state.machine.newPart === 'supply' || logged(state, 'ask-part:supply')) &&
      state.machine.modularSupply === true &&
      complained(state, 'twitch-off', 'click-no-start', 'drive-missing') &&
      !logged(state, 'census:plain', 'drives-off') &&
      !deed.does('our-supply') &&
      spinsDrive(deed)
        ? 'data'
        : null,
  },
  {
    rule: 'failing-drive-worked',
    says: 'The drive fails: copy it before it works for an hour, is read through, or its own system is started on purpose.',
    harm: (state, { does }) =>
      fails(state) && atStake(state) && does('drive-works', 'their-system', 'load') ? 'data' : null,
  },
  {
    rule: 'failing-drive-started',
    says: 'The drive was seen to fail: copy it before it is spun up again.',
    harm: (state, deed) =>
      logged(state, 'drive-health:warning', 'drive-dock:errors', 'drive-read:errors') &&
      atStake(state) &&
      spinsDrive(deed)
        ? 'data'
        : null,
  },
  {
    rule: 'failing-drive-asked-again',
    says: 'The drive has said that it fails: it is not spun up once more to hear it again.',
    harm: (state, { does }) => (logged(state, ...FAILING) && atStake(state) && does('drive-asked') ? 'data' : null),
  },
  {
    rule: 'failing-drive-written',
    says: 'The drive fails: nothing is written to it before it is copied.',
    harm: (state, { does }) => (fails(state) && atStake(state) && does('writes') ? 'data' : null),
  },
  {
    rule: 'extortion-system-started',
    says: 'Somebody has locked the files for money: their own system is not started again.',
    harm: (state, deed) =>
      complained(state, 'ransom') &&
      !logged(state, 'system-anew:works') &&
      switchesOn(deed) &&
      !deed.does('without-drives', 'start-ours')
        ? 'data'
        : null,
  },
  {
    rule: 'extortion-written',
    says: 'Somebody has locked the files for money: the drive is evidence, copied before anything is written.',
    harm: (state, { does }) => (complained(state, 'ransom') && !copyDone(state) && does('writes') ? 'data' : null),
  },
  {
    rule: 'wanted-before-written',
    says: 'What is on the drive is wanted above all: it is copied before anything is written.',
    harm: (state, { does }) => (complained(state, 'data-wanted') && !copyDone(state) && does('writes') ? 'data' : null),
  },
  {
    rule: 'torn-files-unread',
    says: 'Files are torn and nobody knows by what: the drive is read or copied before anything is written.',
    harm: (state, { does }) =>
      complained(state, 'files-broken') && !copyDone(state) && !logged(state, ...READ_WELL) && does('writes')
        ? 'data'
        : null,
  },
  {
    rule: 'written-over-unread',
    says: 'A start or a system is written anew: the drive’s own health, or a copy, comes first.',
    harm: (state, { does }) =>
      does('writes-over') && !copyDone(state) && !logged(state, ...READ_WELL) ? 'data' : null,
  },
  {
    rule: 'set-up-anew-uncopied',
    says: 'The system is set up anew: what is on the drive is copied first.',
    harm: (state, { does }) => (does('sets-up-anew') && atStake(state) ? 'data' : null),
  },
  {
    rule: 'settled-uncopied',
    says: 'The drive fails: not the end before it is copied, or a laboratory has it.',
    harm: (state, { does }) => (fails(state) && atStake(state) && does('ends') ? 'data' : null),
  },
  {
    rule: 'written-through-bad-memory',
    says: 'Memory made errors: nothing is written to their drive before a pass is clean.',
    harm: (state, { does }) => (memoryDoubted(state) && does('writes') ? 'data' : null),
  },
];

/** Whether a test of the memory failed, and none has passed since. */
export const memoryDoubted = (state: RefereeState): boolean =>
  stands(
    state,
    [
      'mem-pass:errors',
      'mem-pass:stops',
      'mem-night:errors',
      'mem-night:stops',
      'modules-passed:one-fails',
      'modules-passed:both-fail',
    ],
    ['mem-pass:clean', 'mem-night:clean', 'modules-passed:none-fails'],
  );

/** Whether a test of the memory has passed, and none has failed since. */
export const memoryPassed = (state: RefereeState): boolean =>
  newest(state, 'mem-pass:clean', 'mem-night:clean') >= 0 && !memoryDoubted(state);
