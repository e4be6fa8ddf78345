import { PART_KINDS } from '../../../custody/part.ts';
import { ModelFault } from '../model/refusal.ts';
import type { UsedIds } from '../model/usedIds.ts';
import type { Caution, Step, StepId } from '../types.ts';

type Danger = { readonly caution: Caution; readonly because: string; readonly is: (step: Step) => boolean };

const handled = (step: Step, ...kinds: readonly string[]): boolean =>
  step.handling.takesOut.some((kind) => kinds.includes(kind));
const does = (step: Step, ...handlings: readonly string[]): boolean =>
  [...step.does, ...step.alsoDoes].some((id) => handlings.includes(id));
/** Parts that a discharge kills: common practice, no source. */
const BARE = ['board', 'processor', 'dimm', 'card', 'drive', 'add-in'];

/** Measured at or beside live rails, standby counted. */
const LIVE: readonly StepId[] = ['meas-standby', 'meas-rails', 'rails-log', 'main-plug-off', 'cell-measure'];

const WET = ['wet-clean'];
const NEW_CELL = ['new-cell'];
const FUMES = ['wipe-dimm', 'blow-dust', ...WET];
/** What dangers are told by. */
export const DANGERS_BY: UsedIds = { steps: LIVE, handlings: [...NEW_CELL, ...FUMES] };

/** What in a step can hurt people, parts or data, and the caution it must carry for it: common practice, no source. */
const DANGERS: readonly Danger[] = [
  {
    caution: 'live',
    because: 'a probe goes in with the mains on',
    is: ({ id }) => LIVE.includes(id),
  },
  {
    caution: 'supply-shut',
    because: 'a supply is handled',
    is: ({ handling, takesOut }) =>
      takesOut.includes('supply') || handling.takesOut.includes('supply') || handling.unplugs.includes('supply'),
  },
  {
    caution: 'eyes',
    because: 'a supply is switched on beside one',
    is: ({ handling }) => handling.borrows === 'load-tester',
  },
  { caution: 'gloves', because: 'coolant or alkali is touched', is: (step) => does(step, ...WET) },
  {
    caution: 'chip-volts',
    because: 'a chip is written from outside',
    is: ({ handling }) => handling.borrows === 'programmer',
  },
  { caution: 'mains', because: 'parts come out', is: ({ handling }) => handling.takesOut.length > 0 },
  { caution: 'mains', because: 'leads come off', is: ({ handling }) => handling.unplugs.length > 0 },
  { caution: 'mains', because: 'hands are inside', is: ({ kind }) => kind === 'reseat' || kind === 'clean' },
  { caution: 'static', because: 'bare boards are touched', is: (step) => handled(step, ...BARE) },
  {
    caution: 'static',
    because: 'a probe goes into the open machine',
    is: ({ handling, open }) => handling.borrows === 'meter' && open.length > 0,
  },
  { caution: 'pins', because: 'the socket lies bare', is: (step) => handled(step, 'processor') },
  {
    caution: 'cooler',
    because: 'it is started after the cooler was off',
    is: (step) => handled(step, 'cooler', 'processor') && step.exposure !== null,
  },
  {
    caution: 'borrowed',
    because: 'a part of ours is at risk',
    is: ({ handling, harm }) =>
      harm.some(({ part, whose }) => part !== 'stick' && whose !== 'owner') ||
      (handling.intoSlotOf !== undefined && PART_KINDS.some((kind) => kind === handling.borrows)),
  },
  { caution: 'write', because: 'it writes to the owner’s disk', is: ({ needs }) => needs.includes('write') },
  { caution: 'disk-key', because: 'an encrypted disk can be locked', is: ({ needs }) => needs.includes('key-or-risk') },
  { caution: 'network', because: 'the owner’s own system is started', is: ({ needs }) => needs.includes('start-own') },
  {
    caution: 'firmware',
    because: 'firmware is written',
    is: ({ does: done }) => done.some((each) => each.startsWith('fw-')),
  },
  { caution: 'cell', because: 'a coin cell is handled', is: (step) => does(step, ...NEW_CELL) },
  {
    caution: 'fumes',
    because: 'there are fumes, dust or fluid',
    is: (step) => does(step, ...FUMES),
  },
  {
    caution: 'hot',
    because: 'the machine is made hot',
    is: (step) => step.kind === 'load' && step.groups.includes('heat-or-noise') && (step.exposure?.loadHours ?? 0) > 0,
  },
  {
    caution: 'hot',
    because: 'hot parts are felt for, or warmed',
    is: ({ handling }) => handling.borrows === 'heat-camera' || handling.borrows === 'warm-air',
  },
];

/**
 * A step that can hurt people, parts or data says so; the caution that is missing is named.
 * @throws {ModelFault} naming file, field and reason; `loadFaultModel` makes a refusal of it.
 */
export function checkCautions(step: Step, where: string): void {
  for (const { caution, because, is } of DANGERS) {
    if (is(step) && !step.cautions.includes(caution))
      throw new ModelFault('steps.json', `${where}.cautions`, `${because}: caution ${caution} is missing`);
  }
}
