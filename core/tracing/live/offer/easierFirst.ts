import { type Ready, undone } from '../gates/ready.ts';
import type { UsedIds } from '../model/usedIds.ts';
import { groupsSeen } from '../readGroups.ts';
import type { Step, StepId } from '../types.ts';
import { HANDS_IN } from './changedFirst.ts';

/**
 * What does less is done before what does more: seating before wiping, and before the owner's settings are lost; plug and
 * ohms before the socket is opened; straight past a riser before the card is doubted; their drives off before one of ours
 * goes in; the output chosen before a system of ours, that before sockets are counted; the device elsewhere before another
 * here; the date before a system is mended. Common practice, no source.
 */
const EASIER: { readonly [step: StepId]: readonly StepId[] } = {
  'dimm-wipe': ['dimm-press'],
  'dimm-one': ['dimm-press'],
  'slot-each': ['dimm-press'],
  sweep: ['dimm-press'],
  'cmos-clear': ['dimm-press'],
  'cpu-look': ['meas-coils'],
  'cpu-again': ['meas-coils'],
  'rig-cpu': ['meas-coils'],
  'rig-card': ['riser-none'],
  'card-loan': ['riser-none'],
  'card-watched': ['riser-none'],
  'live-start': ['output-choose'],
  'port-round': ['output-choose', 'live-start'],
  'keyboard-ours': ['device-elsewhere'],
  'drive-loan': ['drives-off'],
  'undo-update': ['output-choose', 'date-look'],
  'driver-anew': ['output-choose'],
  'system-repair': ['date-look'],
};
/** With no picture the card is tried before the settings go. Common practice, no source. */
const EASIER_IF_DARK: typeof EASIER = { 'cmos-clear': ['card-seat', 'card-none'] };
/** Of what shows no sign of life the plug meter tells before the supply is unplugged. Common practice, no source. */
const EASIER_IF_DEAD: typeof EASIER = { 'supply-alone': ['wall-watts'], 'supply-beside': ['wall-watts'] };
/** What twitches and goes off is tried without the processor's plug before its ohms: a minute. Common practice, no source. */
const EASIER_IF_CYCLING: typeof EASIER = { 'meas-coils': ['cpu-plug-off'] };
/**
 * Where hands were in the case, the plugs are pressed home before the socket is opened, and the slots are looked at before
 * the modules go through them. Common practice, no source.
 */
const EASIER_IF_WORKED_ON: typeof EASIER = {
  'cpu-look': ['press-plugs'],
  'cpu-again': ['press-plugs'],
  'rig-cpu': ['press-plugs'],
  'dimm-one': ['slots-look'],
  'slot-each': ['slots-look'],
};
/** Where years of dirt were told, contacts are wiped at once. */
const DIRT_TOLD = 'long-unused';
const WIPED: { readonly [step: StepId]: StepId } = { 'dimm-press': 'dimm-wipe' };
/** What it goes by. */
export const EASIER_FIRST: UsedIds = {
  steps: [
    ...[EASIER, EASIER_IF_DARK, EASIER_IF_DEAD, EASIER_IF_CYCLING, EASIER_IF_WORKED_ON].flatMap((table) =>
      Object.entries(table).flatMap(([id, first]) => [id, ...first]),
    ),
    ...Object.entries(WIPED).flat(),
  ],
  changes: [DIRT_TOLD],
};

/** What does less of the same than what is planned, where it can be done and was not yet; null: nothing. */
export function easierFirst(ready: Ready, planned: Step): StepId | null {
  const { changed } = ready.tracing.told;
  const dirt = changed.includes(DIRT_TOLD);
  const seen = groupsSeen(ready.model, ready.tracing);
  const first = [
    ...(changed.some((id) => HANDS_IN.includes(id)) ? (EASIER_IF_WORKED_ON[planned.id] ?? []) : []),
    ...(seen.includes('no-reaction') ? (EASIER_IF_DEAD[planned.id] ?? []) : []),
    ...(seen.includes('cycles') ? (EASIER_IF_CYCLING[planned.id] ?? []) : []),
    ...((seen.includes('no-picture') ? EASIER_IF_DARK[planned.id] : null) ?? EASIER[planned.id] ?? []),
  ];
  const easier = first.map((id) => (dirt ? (WIPED[id] ?? id) : id));
  return easier.find((id) => id !== planned.id && undone(ready, id) !== null) ?? null;
}
