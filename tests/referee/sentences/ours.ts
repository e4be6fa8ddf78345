import { goesOnRig, lendsOurs, type Sentence } from '../breach.ts';
import { changed, complained, logged, newest, type RefereeState, stands } from '../state.ts';
import { burntUnmeasured, isWet, stopTold, supplyOutside } from './power.ts';

const OHMS = ['meas-coils:fine', 'short-which:gone', 'short-cleared:cleared'];

/** Whether their supply was measured within, and nothing since says that it is not. */
const supplyProven = (state: RefereeState) =>
  logged(state, 'meas-rails:within', 'supply-alone:holds', 'supply-cleared:within', 'rig-supply:works-there') &&
  !supplyOutside(state) &&
  newest(state, 'meas-rails:within', 'supply-alone:holds', 'supply-cleared:within', 'rig-supply:works-there') >
    newest(
      state,
      ...['meas-rails:no-power-good', 'meas-rails:trips', 'rails-again:outside', 'supply-alone:dead'],
      'rig-supply:fails-there',
    );

/** Measured within over several starts, or beside one measuring under a load as well; a supply of ours instead of theirs is. */
const supplyProvenTwice = (state: RefereeState) =>
  supplyProven(state) &&
  (logged(state, 'rails-again:within', 'rig-supply:works-there', 'supply-order:works') ||
    (logged(state, 'meas-rails:within', 'supply-cleared:within') &&
      logged(state, 'supply-alone:holds', 'rails-log:steady')));

/** Whether nothing on the board can be told from a short under it. */
const offAfterBuilding = (state: RefereeState) =>
  changed(state, 'never-worked') &&
  complained(state, 'off-after-seconds', 'twitch-off', 'click-no-start', 'restarts-itself');

/** A machine that does not even wake cannot be woken by a processor. */
const doesNotWake = (state: RefereeState) => complained(state, 'no-reaction', 'light-no-start');

/** A storm came over it, and its board was not yet seen to work on our rig. */
const stormBeforeRig = (state: RefereeState) => changed(state, 'storm') && !logged(state, 'rig-board:works-there');

/** What our own parts must not be lent to. */
export const OURS: readonly Sentence[] = [
  {
    rule: 'own-plug',
    says: 'The maker’s own plug, or a brick: neither our supply, nor our board, nor our tester goes on it.',
    harm: ({ machine }, { does }) =>
      (machine.ownMakeSupply === true || machine.brick === true) &&
      !does('same-plug') &&
      does('ours-supply', 'ours-board', 'tester')
        ? 'machine'
        : null,
  },
  {
    rule: 'look-before-ours',
    says: 'Nothing of ours but a cheap module or card goes in before the look inside.',
    harm: (state, deed) =>
      !logged(state, 'look-inside') && lendsOurs(deed) && !deed.does('same-plug') && !cheap(state, deed)
        ? 'ours'
        : null,
  },
  {
    rule: 'ohms-after-a-bang',
    says: 'A bang, smoke, a smell or a breaker was told, or a burn was seen: ohms before anything of ours.',
    harm: (state, deed) =>
      (complained(state, 'smoke-bang', 'smell', 'trips-breaker') ||
        changed(state, 'bang-smell') ||
        burntUnmeasured(state)) &&
      !logged(state, ...OHMS) &&
      lendsOurs(deed) &&
      !deed.does('same-plug')
        ? 'ours'
        : null,
  },
  {
    rule: 'ohms-at-signs-of-a-short',
    says: 'It trips or something gets hot at once: ohms before anything of ours; our supply trips too, and lives.',
    harm: (state, deed) =>
      (logged(state, 'feel-heat:hot-board', 'feel-heat:hot-card') ||
        (logged(state, 'meas-rails:trips') && !deed.does('ours-supply'))) &&
      !logged(state, ...OHMS) &&
      lendsOurs(deed) &&
      !deed.does('same-plug')
        ? 'ours'
        : null,
  },
  {
    rule: 'look-before-rig',
    says: 'Smoke, a bang, a smell or liquid was told: look before anything of theirs goes onto our rig.',
    harm: (state, deed) => (stopTold(state) && !logged(state, 'look-inside') && goesOnRig(deed) ? 'ours' : null),
  },
  {
    rule: 'wet-keeps-ours-out',
    says: 'It is wet: nothing of ours goes in, nothing of theirs onto our rig, before it is clean and dry.',
    harm: (state, deed) =>
      isWet(state) && ((lendsOurs(deed) && !deed.does('ours-cooler')) || goesOnRig(deed)) ? 'ours' : null,
  },
  {
    rule: 'storm-on-rig',
    says: 'A storm, a bang or a burn: ohms before their card, memory or processor goes onto our rig.',
    harm: (state, { does }) =>
      (changed(state, 'storm', 'bang-smell') || complained(state, 'smoke-bang', 'smell')) &&
      !logged(state, ...OHMS) &&
      does('rig-card', 'rig-dimm', 'rig-processor', 'rig-board')
        ? 'ours'
        : null,
  },
  {
    rule: 'burnt-card-on-rig',
    says: 'Something is burnt: their card goes onto our rig only when its socket was looked at.',
    harm: (state, { does }) =>
      logged(state, 'look-inside:burnt') &&
      !logged(state, 'burnt-where', 'card-seat', 'short-which') &&
      does('rig-card')
        ? 'ours'
        : null,
  },
  {
    rule: 'rails-before-good',
    says: 'Their supply was not measured within: no good processor, board or drive of ours hangs on it.',
    harm: (state, { does }) =>
      !supplyProven(state) && does('ours-processor', 'ours-board', 'ours-drive') ? 'ours' : null,
  },
  {
    rule: 'rails-twice-before-dear',
    says: 'One measuring misses what is too high now and then: rails twice, or under load, before a good processor or board.',
    harm: (state, { does }) =>
      supplyProven(state) && !supplyProvenTwice(state) && does('ours-processor', 'ours-board') ? 'ours' : null,
  },
  {
    rule: 'bad-supply-keeps-ours-out',
    says: 'Their supply measures outside: nothing of ours hangs on it, not even a cheap part.',
    harm: (state, deed) =>
      supplyOutside(state) && lendsOurs(deed) && !deed.does('our-supply', 'same-plug') ? 'ours' : null,
  },
  {
    rule: 'lead-before-drive',
    says: 'Modular leads: no drive of ours before the leads were seen to be this supply’s own.',
    harm: (state, { does }) =>
      (state.machine.modularSupply === true || logged(state, 'census:lead-mixed')) &&
      newest(state, 'census:plain', 'lead-other', 'supply-in', 'supply-order') <= newest(state, 'census:lead-mixed') &&
      does('ours-drive')
        ? 'ours'
        : null,
  },
  {
    rule: 'coils-and-socket',
    says: 'No good processor before coils were measured fine and the socket was seen fine.',
    harm: (state, { does }) =>
      does('ours-processor') &&
      (!logged(state, ...OHMS) ||
        stands(state, ['meas-coils:coil-open'], ['meas-coils:fine', 'board-order:works']) ||
        !logged(state, 'cpu-look') ||
        stands(state, ['cpu-look:pins'], ['cpu-look:fine']) ||
        stands(state, ['cpu-look:dirt'], ['cpu-look:fine', 'cpu-again']))
        ? 'ours'
        : null,
  },
  {
    rule: 'processor-where-none-helps',
    says: 'No good processor onto a board that does not wake, or that a storm may have killed.',
    harm: (state, { does }) =>
      does('ours-processor') && (doesNotWake(state) || stormBeforeRig(state)) ? 'ours' : null,
  },
  {
    rule: 'case-before-good',
    says: 'Newly built and off at once: the board out of the case before a good processor or board goes in.',
    harm: (state, { does }) =>
      offAfterBuilding(state) && !logged(state, 'bare-board', 'under-look') && does('ours-processor', 'ours-board')
        ? 'ours'
        : null,
  },
];

/** A module or a card of the cheap sort, where nothing was told that could kill it and nobody was in there. */
const cheap = (state: RefereeState, deed: Parameters<typeof lendsOurs>[0]) =>
  deed.does('ours-dimm', 'ours-card') &&
  !stopTold(state) &&
  !changed(state, 'never-worked', 'someone-worked', 'moved', 'dropped');
