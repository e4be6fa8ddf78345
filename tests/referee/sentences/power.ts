import { feedsTheirSupply, givesMains, type Sentence, switchesOn } from '../breach.ts';
import { changed, complained, logged, newest, type RefereeState, stands } from '../state.ts';

const WET = ['look-inside:wet', 'under-look:corroded'];
const MEASURED = ['meas-coils:fine', 'short-which:gone', 'short-cleared:cleared'];

/** Whether smoke, a bang, a smell, liquid or a breaker was told or seen. */
export const stopTold = (state: RefereeState): boolean =>
  complained(state, 'smoke-bang', 'smell', 'leak', 'trips-breaker') || changed(state, 'bang-smell', 'spill');

/** Whether it was found wet and was not cleaned and dried since. */
export const isWet = (state: RefereeState): boolean => stands(state, WET, ['wet-clean']);

/** Whether something burnt was seen and no ohms have said since that nothing is shorted. */
export const burntUnmeasured = (state: RefereeState): boolean =>
  stands(state, ['look-inside:burnt', 'under-look:burnt'], MEASURED);

const burntSeen = (state: RefereeState) => logged(state, 'look-inside:burnt', 'under-look:burnt');

/** Whether the place of the burn is known, or what may have burnt was looked at plug by plug. */
const burnFound = (state: RefereeState) =>
  logged(state, 'burnt-where', 'under-look', 'aux-other', 'press-plugs', 'card-seat', 'card-none');

/** When mains may be given to it, and when not. */
export const POWER: readonly Sentence[] = [
  {
    rule: 'look-before-mains',
    says: 'Smoke, a bang, a smell, liquid or a fallen breaker was told: look inside before any mains, standby included.',
    harm: (state, deed) =>
      stopTold(state) && !logged(state, 'look-inside') && (givesMains(deed) || deed.does('tester')) ? 'machine' : null,
  },
  {
    rule: 'breaker-measured',
    says: 'A breaker fell: their supply gets no mains before earth and insulation were measured good.',
    harm: (state, deed) =>
      complained(state, 'trips-breaker') &&
      newest(state, 'earth-insulation:good') <= newest(state, 'earth-insulation:bad') &&
      feedsTheirSupply(deed)
        ? 'machine'
        : null,
  },
  {
    rule: 'look-after-a-fall',
    says: 'It fell: look inside before it is switched on.',
    harm: (state, deed) =>
      changed(state, 'dropped') && !logged(state, 'look-inside') && switchesOn(deed) ? 'machine' : null,
  },
  {
    rule: 'wet-dried',
    says: 'It is wet inside: no mains, standby included, before it is cleaned and dry.',
    harm: (state, deed) => (isWet(state) && givesMains(deed) && !deed.does('dries') ? 'machine' : null),
  },
  {
    rule: 'leak-found',
    says: 'It was wet and has a liquid cooler: no mains, and no end, before the source is found or that cooler is off.',
    harm: (state, deed) =>
      state.machine.liquidCooler !== undefined &&
      logged(state, 'look-inside:wet') &&
      newest(state, 'leak-source', 'cool-loan') < newest(state, 'look-inside:wet') &&
      (deed.does('ends') || (givesMains(deed) && !deed.does('ours-cooler', 'dries')))
        ? 'machine'
        : null,
  },
  {
    rule: 'burnt-measured',
    says: 'Something is burnt: measure for a short before any mains.',
    harm: (state, deed) => (burntUnmeasured(state) && (givesMains(deed) || deed.does('tester')) ? 'machine' : null),
  },
  {
    rule: 'burnt-where',
    says: 'Something is burnt: say where before it is switched on.',
    harm: (state, deed) =>
      burntSeen(state) && !burnFound(state) && switchesOn(deed) && !deed.does('finds-burn') ? 'machine' : null,
  },
  {
    rule: 'burnt-plug-loaded',
    says: 'Something is burnt: no load before the burnt plug is replaced, or it was seen to be no plug.',
    harm: (state, deed) =>
      burntSeen(state) &&
      !logged(
        state,
        'aux-other',
        'burnt-where:board',
        'burnt-where:card',
        'burnt-where:supply',
        'burnt-where:old-soot',
      ) &&
      deed.does('load')
        ? 'machine'
        : null,
  },
  {
    rule: 'cooler-loose',
    says: 'The cooler hangs loose: not switched on before it sits again.',
    harm: (state, deed) =>
      stands(state, ['look-inside:cooler-loose'], ['cool-even', 'cool-again', 'cpu-again', 'cool-loan']) &&
      switchesOn(deed) &&
      !deed.does('cools')
        ? 'machine'
        : null,
  },
  {
    rule: 'fan-stands',
    says: 'A fan or the pump stands: no load before it turns or another one is on.',
    harm: (state, deed) =>
      stands(
        state,
        ['fan-look:fan-still', 'fan-look:pump-still'],
        ['fan-look:all-turn', 'fan-lead:works', 'cool-loan:works'],
      ) && deed.does('load')
        ? 'machine'
        : null,
  },
  {
    rule: 'battery-swollen',
    says: 'A battery has swollen: no mains, nothing pressed, nothing sent before it is out.',
    harm: (state, deed) =>
      state.log.some(({ outcome }) => /swollen|battery/.test(outcome)) &&
      !logged(state, 'battery-out') &&
      (givesMains(deed) || deed.does('tester', 'sends'))
        ? 'machine'
        : null,
  },
  {
    rule: 'supply-outside',
    says: 'A rail stands too high or too low: no start on this supply before it was replaced and measures within.',
    harm: (state, deed) => (supplyOutside(state) && feedsTheirSupply(deed) && switchesOn(deed) ? 'machine' : null),
  },
  {
    rule: 'leads-mixed',
    says: 'Leads of another supply are in it: not switched on with them.',
    harm: (state, deed) =>
      stands(state, ['census:lead-mixed'], ['lead-other', 'as-before', 'step-back', 'supply-in', 'supply-order']) &&
      switchesOn(deed) &&
      !deed.does('other-leads', 'without-drives') &&
      !['as-before', 'step-back'].includes(deed.step)
        ? 'machine'
        : null,
  },
  {
    rule: 'open-loop-drained',
    says: 'An open loop of liquid: nothing comes off before it is drained, with the owner’s word.',
    harm: (state, deed) =>
      state.machine.liquidCooler === 'open-loop' &&
      !logged(state, 'ask-owner:yes', 'ask-risk:yes') &&
      deed.does('cooler-off', 'card-out', 'board-out', 'processor-out')
        ? 'machine'
        : null,
  },
];

/** Whether a rail of their supply was measured out of its limits, and no measurement since says otherwise. */
export function supplyOutside(state: RefereeState): boolean {
  const mended = ['supply-cleared:within', 'supply-order:works'];
  return (
    stands(
      state,
      ['meas-rails:outside', 'supply-alone:outside', 'supply-cleared:outside'],
      [...mended, 'meas-rails:within'],
    ) || stands(state, ['rails-again:outside'], mended)
  );
}
