import { goesOnRig, lendsOurs, type Sentence, switchesOn } from '../breach.ts';
import { chance, complained, logged, newest, type RefereeState, stands } from '../state.ts';
import { stopTold, supplyOutside } from './power.ts';

const SHORT = ['meas-coils:short', 'short-which:still', 'short-cleared:still'];
const NO_SHORT = ['meas-coils:fine', 'short-which:gone', 'short-cleared:cleared'];

/** Whether a short was measured and ohms have not said since that it is gone. */
export const shortStands = (state: RefereeState): boolean => stands(state, SHORT, NO_SHORT);

/** Whether it trips, twitches or cycles: the signs of a short somewhere. */
const trips = (state: RefereeState) =>
  complained(state, 'twitch-off', 'click-no-start', 'trips-breaker') ||
  logged(state, 'meas-rails:trips', 'wall-watts:pulses');

/** Whether ohms put the short into their card, or it is believed to sit there. */
export const cardShorted = (state: RefereeState): boolean =>
  (logged(state, 'meas-coils:short') && logged(state, 'short-which:gone')) ||
  (trips(state) && logged(state, 'card-none:works')) ||
  chance(state, (fault) => fault === 'gpu-short') >= 0.5;

const driveShorted = (state: RefereeState) =>
  (trips(state) && logged(state, 'drives-off:works')) || chance(state, (fault) => fault === 'drive-short') >= 0.5;

/** Steps that show by what they leave out or change which part is the suspect. */
const SUSPECT_OF: Readonly<Record<string, string>> = {
  'supply-beside': 'supply',
  'supply-in': 'supply',
  'supply-order': 'supply',
  'supply-watched': 'supply',
  'brick-ours': 'supply',
  'card-none': 'card',
  'card-loan': 'card',
  'card-order': 'card',
  'drives-off': 'drive',
  'drive-loan': 'drive',
  'board-loan': 'board',
  'board-order': 'board',
  'dimm-loan': 'dimm',
  'cpu-loan': 'processor',
  'cpu-order': 'processor',
  'cool-loan': 'cooler',
  'riser-none': 'riser',
  'strip-outside': 'outside',
  'front-off': 'front-panel',
};

/** The part that would go back in now: what the newest swap that made it work has named. */
const suspect = (state: RefereeState) => {
  const swap = state.log.findLast(({ step, outcome }) => outcome === 'works' && Object.hasOwn(SUSPECT_OF, step));
  return swap && SUSPECT_OF[swap.step];
};

/** What a short forbids, and what is not switched on again to prove what ohms or a tester can prove. */
export const SHORTS: readonly Sentence[] = [
  {
    rule: 'short-found',
    says: 'A short was measured: find where it sits, and measure it gone, before the next start.',
    harm: (state, deed) => (shortStands(state) && switchesOn(deed) ? 'machine' : null),
  },
  {
    rule: 'short-keeps-ours-out',
    says: 'A short was measured: nothing of ours goes in, nothing of theirs onto our rig.',
    harm: (state, deed) => (shortStands(state) && (lendsOurs(deed) || goesOnRig(deed)) ? 'ours' : null),
  },
  {
    rule: 'shorted-card',
    says: 'Their card is shorted: it gets no power again, in no slot.',
    harm: (state, { does }) =>
      (does('card-powered') || (does('put-back') && (suspect(state) ?? 'card') === 'card')) && cardShorted(state)
        ? 'machine'
        : null,
  },
  {
    rule: 'shorted-card-on-rig',
    says: 'Their card is shorted: it does not go onto our rig.',
    harm: (state, { does }) => (does('rig-card') && cardShorted(state) ? 'ours' : null),
  },
  {
    rule: 'shorted-drive',
    says: 'Their drive pulls a rail down: it gets no power again, whatever is on it.',
    harm: (state, { does }) =>
      (does('drive-dock', 'drive-asked', 'drive-works', 'drive-powered') ||
        (does('put-back') && suspect(state) === 'drive')) &&
      driveShorted(state)
        ? 'data'
        : null,
  },
  {
    rule: 'supply-put-back',
    says: 'A supply that banged, smelt, threw the breaker or measures outside is not switched on again to prove it.',
    harm: (state, { does }) =>
      does('put-back') &&
      suspect(state) === 'supply' &&
      (stopTold(state) || supplyOutside(state) || logged(state, 'earth-insulation:bad'))
        ? 'machine'
        : null,
  },
  {
    rule: 'board-put-back',
    says: 'A board with a measured short is not switched on again to prove it.',
    harm: (state, { does }) =>
      does('put-back') &&
      logged(state, ...SHORT) &&
      newest(state, 'short-which:gone', 'short-cleared:cleared') < newest(state, ...SHORT)
        ? 'machine'
        : null,
  },
];
