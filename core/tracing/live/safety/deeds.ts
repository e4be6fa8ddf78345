import { PART_KINDS } from '../../../custody/part.ts';
import { lookMask } from '../configuration.ts';
import { maskOf } from '../model/circuits.ts';
import type { FaultModel, Step, TracingCase } from '../types.ts';

/** What a step does that can hurt people, a machine, data or a part of ours. With `:kind` where a part is meant. */
export const DEEDS = [
  'mains-on',
  'start',
  'load',
  'suspect-put-back-under-power',
  'owners-system-started',
  'drive-worked',
  'drive-powered',
  'loaner-in',
  'own-part-on-rig',
  'supply-on-tester',
  'drive-on-dock',
  'part-ordered',
  'sent-away',
  'write-to-owners-drive',
  'settings-cleared',
  'firmware-written',
  'mains-pulled',
  /** No step's: the tracing is not ended by a verdict. */
  'settled',
] as const;
export type Deed = (typeof DEEDS)[number];

/** Looked at or measured with standby voltage on the owner's machine. */
const WITH_STANDBY = ['look-mains', 'meas-standby', 'meas-rails', 'rails-log', 'feel-heat', 'wall-watts'];
const DRIVE_WORKED = ['drive-health', 'drive-read', 'log-read', 'scan-offline'];
const DRIVE_POWERED = ['meas-rails', 'drive-health', 'drive-read'];
/** Handlings that leave the board with other settings than the owner's. */
const CLEARS = ['clear-settings', 'default-settings', 'new-cell', 'fw-update', 'fw-rescue', 'fw-clip'];
/** A third of an hour under load. Common practice, no source. */
const LOAD_HOURS = 0.33;

const DRIVE = maskOf(['drive', 'drive-leads', 'drive-port']);
const SOFTWARE = maskOf(['software']);

/** What a step does to this machine as it stands now. */
export function deedsOf(model: FaultModel, tracing: TracingCase, step: Step): ReadonlySet<string> {
  return new Set<string>([...underPower(model, tracing, step), ...withParts(step), ...leavesBehind(step)]);
}

function underPower(model: FaultModel, tracing: TracingCase, step: Step): readonly Deed[] {
  const atMachine = step.onRig === null;
  const starts = atMachine && step.starts && step.id !== 'meas-standby';
  const { look } = lookMask(model, tracing.log, step);
  const driveIn = (DRIVE & look) === 0;
  const foreign = [step.handling.borrows, ...step.handling.alsoBorrows].some(
    (one) => one === 'stick' || one === 'dock',
  );
  const ownSystem = starts && driveIn && !foreign && (SOFTWARE & look) === 0;
  const load = atMachine && (step.exposure?.loadHours ?? 0) >= LOAD_HOURS;
  return [
    ...(starts || (atMachine && WITH_STANDBY.includes(step.id)) ? (['mains-on'] as const) : []),
    ...(starts ? (['start'] as const) : []),
    ...(load ? (['load'] as const) : []),
    ...(step.id === 'put-back' ? (['suspect-put-back-under-power'] as const) : []),
    ...(ownSystem ? (['owners-system-started'] as const) : []),
    ...(ownSystem || DRIVE_WORKED.includes(step.id) ? (['drive-worked'] as const) : []),
    ...((starts && driveIn && step.id !== 'drive-image') || DRIVE_POWERED.includes(step.id)
      ? (['drive-powered'] as const)
      : []),
  ];
}

/** One of ours into the owner's machine, theirs onto our rig, a part ordered or sent away. */
function withParts({ onRig, kind, handling: { borrows, orders, sends, intoRig } }: Step): readonly string[] {
  const ours = onRig === null && kind === 'swap' && PART_KINDS.some((one) => one === borrows) ? borrows : orders;
  return [
    ...(ours ? ['loaner-in', `loaner-in:${ours}`] : []),
    ...(intoRig && borrowsRig(borrows) ? ['own-part-on-rig', `own-part-on-rig:${intoRig}`] : []),
    ...(borrows === 'load-tester' ? ['supply-on-tester'] : []),
    ...(borrows === 'dock' ? ['drive-on-dock'] : []),
    ...(orders ? ['part-ordered'] : []),
    ...(sends ? ['sent-away'] : []),
  ];
}

const borrowsRig = (borrows: Step['handling']['borrows']): boolean => borrows === 'rig' || borrows === 'load-tester';

function leavesBehind(step: Step): readonly Deed[] {
  const clears = [...step.does, ...step.alsoDoes].some((one) => CLEARS.includes(one));
  return [
    ...(step.needs.includes('write') || step.cautions.includes('write') ? (['write-to-owners-drive'] as const) : []),
    ...(clears ? (['settings-cleared'] as const) : []),
    ...(step.cautions.includes('firmware') ? (['firmware-written'] as const) : []),
    ...(step.cautions.includes('mains') ? (['mains-pulled'] as const) : []),
  ];
}
