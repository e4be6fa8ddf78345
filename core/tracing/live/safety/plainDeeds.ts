import { PART_KINDS } from '../../../custody/part.ts';
import type { Step } from '../types.ts';

/** Handlings that leave the board with other settings than the owner's. */
export const CLEARS: readonly string[] = [
  'clear-settings',
  'default-settings',
  'new-cell',
  'fw-update',
  'fw-rescue',
  'fw-clip',
];
/** A third of an hour under load. Common practice, no source. */
const LOAD_HOURS = 0.33;

type Told = Pick<
  Step,
  'kind' | 'onRig' | 'exposure' | 'handling' | 'does' | 'alsoDoes' | 'needs' | 'cautions' | 'starts' | 'id'
>;

/** The deeds that a step's own fields give away: these it must say of itself, whoever wrote it. */
export function plainDeeds(step: Told): readonly string[] {
  const { kind, onRig, exposure, handling, does, alsoDoes, needs, cautions } = step;
  const { borrows, orders, sends, intoRig } = handling;
  const starts = onRig === null && step.starts;
  const ours = onRig === null && kind === 'swap' && PART_KINDS.some((one) => one === borrows) ? borrows : orders;
  const rig = borrows === 'rig' || borrows === 'load-tester';
  return [
    ...(starts ? ['mains-on', 'start'] : []),
    ...(onRig === null && (exposure?.loadHours ?? 0) >= LOAD_HOURS ? ['load'] : []),
    ...(ours ? ['loaner-in', `loaner-in:${ours}`] : []),
    ...(intoRig && rig ? ['own-part-on-rig', `own-part-on-rig:${intoRig}`] : []),
    ...(borrows === 'load-tester' ? ['supply-on-tester'] : []),
    ...(borrows === 'dock' ? ['drive-on-dock'] : []),
    ...(orders ? ['part-ordered'] : []),
    ...(sends ? ['sent-away'] : []),
    ...(needs.includes('write') || cautions.includes('write') ? ['write-to-owners-drive'] : []),
    ...([...does, ...alsoDoes].some((one) => CLEARS.includes(one)) ? ['settings-cleared'] : []),
    ...(cautions.includes('firmware') ? ['firmware-written'] : []),
    ...(cautions.includes('mains') ? ['mains-pulled'] : []),
  ];
}

/** What a machine that runs does to the owner's drive, where nobody says that it is kept from it. */
const AS_IT_RUNS = ['owners-system-started', 'own-system-used', 'drive-worked', 'drive-asked', 'drive-powered'];

/** Where a step says nothing of itself: all that its fields give away, and the worst that may go along with it. */
export function cautiousDeeds(step: Told): readonly string[] {
  const asked = step.kind === 'ask';
  const plain = plainDeeds(step);
  const off = step.kind === 'send' || step.onRig !== null || (!step.starts && step.cautions.includes('mains'));
  return [
    ...new Set([
      ...plain,
      ...(asked || off ? [] : ['mains-on', 'start', ...AS_IT_RUNS]),
      ...(plain.includes('write-to-owners-drive') ? ['drive-read-through', 'system-written'] : []),
      ...(step.exposure !== null && step.kind === 'load' ? ['load'] : []),
      ...(step.kind === 'back' ? ['suspect-put-back-under-power'] : []),
    ]),
  ];
}
