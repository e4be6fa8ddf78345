import { PART_KINDS } from '../../../custody/part.ts';
import { assemblyOf, opensOf } from '../../live/assembly.ts';
import { lookMask } from '../../live/configuration.ts';
import { maskOf } from '../../live/model/circuits.ts';
import { ALIASES } from '../../live/renamed/aliases.ts';
import type { FaultModel, StateId, Step, TracingCase } from '../../live/types.ts';
import type { Kind } from './kindNames.ts';

/** Looked at or measured with standby voltage on the owner's machine. */
const WITH_STANDBY = ['look-mains', 'meas-standby', 'meas-rails', 'rails-log', 'feel-heat', 'wall-watts'];
const DRIVE_WORKED = ['drive-health', 'drive-read', 'log-read', 'scan-offline'];
const DRIVE_POWERED = ['meas-rails', 'drive-health', 'drive-read'];
/** Handlings that leave the board with other settings than the owner's. */
const CLEARS = ['clear-settings', 'default-settings', 'new-cell', 'fw-update', 'fw-rescue', 'fw-clip'];
/** A third of an hour under load. */
const LOAD_HOURS = 0.33;

const STATES: Readonly<Record<StateId, Kind>> = {
  cpu: 'processor-out',
  cooler: 'cooler-off',
  board: 'board-out',
  supply: 'supply-out',
  card: 'card-out',
  panel: 'panel-open',
};

/** What a step does to this machine as it stands now, in the kinds of the bench cases; with `:part` where a part is named. */
export function kindsOfStep(model: FaultModel, tracing: TracingCase, step: Step): ReadonlySet<string> {
  const listed = ALIASES.kinds[step.id];
  if (listed) return new Set(listed);
  return new Set<string>([
    ...underPower(model, tracing, step),
    ...withParts(step),
    ...opensOf(assemblyOf(model, tracing.switches), step).flatMap((state) => STATES[state] ?? []),
    ...leavesBehind(step),
  ]);
}

function underPower(model: FaultModel, tracing: TracingCase, step: Step): readonly Kind[] {
  const atMachine = step.onRig === null;
  const starts = atMachine && step.starts && step.id !== 'meas-standby';
  const { look } = lookMask(model, tracing.log, step);
  const driveIn = (maskOf(['drive', 'drive-leads', 'drive-port']) & look) === 0;
  const foreign = [step.handling.borrows, ...step.handling.alsoBorrows].some(
    (one) => one === 'stick' || one === 'dock',
  );
  const ownSystem = starts && driveIn && !foreign && (maskOf(['software']) & look) === 0;
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
    ...(orders ? ['part-ordered'] : []),
    ...(sends ? ['sent-away'] : []),
  ];
}

const borrowsRig = (borrows: Step['handling']['borrows']): boolean => borrows === 'rig' || borrows === 'load-tester';

function leavesBehind(step: Step): readonly Kind[] {
  const clears = [...step.does, ...step.alsoDoes].some((one) => CLEARS.includes(one));
  return [
    ...(step.needs.includes('write') || step.cautions.includes('write') ? (['write-to-owners-drive'] as const) : []),
    ...(clears ? (['settings-cleared'] as const) : []),
    ...(step.cautions.includes('firmware') ? (['firmware-written'] as const) : []),
    ...(step.cautions.includes('mains') ? (['mains-pulled'] as const) : []),
  ];
}
