import { DRIVE_IMAGE, knownStep } from '../model/special.ts';
import type { OutcomesByStep, UsedIds } from '../model/usedIds.ts';
import type { FaultModel, LoggedStep, MachineNeed, Step, TracingCase } from '../types.ts';
import { gateToClear } from './gates.ts';
import { asksForLacking, hasWord } from './ownersWords.ts';
import { hasShown, isNamed } from './shown.ts';
import { maySinceHaveFailed, standsNow } from './standsNow.ts';

/** Which facts of the machine keep a step from making sense. What is not known does not keep it. */
export function unmetNeed(model: FaultModel, step: Step, tracing: TracingCase): MachineNeed | null {
  return step.asks.find((need) => !holds(model, step, need, tracing)) ?? null;
}

/** What owners tell where a part was added or changed. */
const PART_CAME = 'new-part';
const ADDED = [PART_CAME, 'someone-worked'];

/** Terms that tell of such a machine. */
const TOLD = {
  screens: ['one-screen-dark'],
  input: ['keys-mouse-dead'],
  sound: ['sound-dead'],
  leak: ['leak'],
  mains: ['trips-breaker', 'smoke-bang', 'smell'],
  noise: ['rattle'],
  goesOff: ['twitch-off', 'click-no-start'],
  ransom: ['ransom'],
};
const FAILING: OutcomesByStep = {
  'drive-health': ['warning'],
  'drive-dock': ['errors'],
  'drive-read': ['errors', 'stalls'],
  [DRIVE_IMAGE]: ['partly', 'copied'],
};
/** What showed it. */
const SHOWN = {
  burnt: { 'look-inside': ['burnt'], 'under-look': ['burnt'] },
  wet: { 'look-inside': ['wet'], 'under-look': ['corroded'] },
  standbyLow: { 'meas-standby': ['no-standby', 'low'] },
  plugOff: { 'look-inside': ['plug-off'] },
  cardLoose: { 'look-inside': ['card-loose'] },
  failing: FAILING,
  noShort: { 'meas-coils': ['fine'] },
};
/** What they go by. */
export const MACHINE_NEEDS_BY: readonly UsedIds[] = [
  { symptoms: Object.values(TOLD).flat(), changes: ADDED },
  ...Object.values(SHOWN).map((shown) => ({ shown })),
];

function holds(model: FaultModel, step: Step, need: MachineNeed, tracing: TracingCase): boolean {
  const { machine, switches, log } = tracing;
  const unless = (name: (typeof switches)[number]) => !switches.includes(name);
  const notFalse = (fact: boolean | null) => fact !== false;
  switch (need) {
    case 'graphics-in-processor':
      return notFalse(machine.graphicsInProcessor);
    case 'card':
      return notFalse(machine.card);
    case 'two-dimms':
      return machine.dimms === null || machine.dimms >= 2;
    case 'two-drives':
      return machine.drives === null || machine.drives >= 2;
    case 'socketed-memory':
      return unless('soldered-memory');
    case 'socketed-processor':
      return unless('soldered-processor');
    case 'standard-supply':
      return unless('own-make-supply');
    case 'riser':
      return machine.riser === true;
    case 'add-in':
      return notFalse(machine.addIns);
    case 'modular-supply':
      return notFalse(machine.modularSupply);
    case 'drive':
      return machine.drives === null || machine.drives > 0;
    case 'firmware-rescue':
      return machine.firmwareRescue === true;
    case 'second-slot':
      return machine.slots === null || machine.slots >= 2;
    case 'key-in-hand':
      return hasWord(model, tracing, 'key');
    case 'word-lacking':
      return asksForLacking(model, tracing, step);
    case 'named-part':
      return standsNow(model, tracing) === 'works-without';
    case 'swept':
      return log.some((entry) => !entry.struck && sweptClean(model, entry));
    case 'cure-to-prove':
      return log.some(
        (entry) =>
          !entry.struck &&
          knownStep(model, entry.step)?.outcomes.some(
            ({ id, meaning }) => id === entry.outcome && meaning.means === 'works',
          ),
      );
    case 'works-here':
      return standsNow(model, tracing) === 'works';
    case 'gate-to-clear':
      return gateToClear(model, tracing, step.id);
    case 'failed-here':
      return maySinceHaveFailed(model, tracing);
    case 'two-screens':
      return isNamed(tracing, TOLD.screens);
    case 'no-input':
      return isNamed(tracing, TOLD.input);
    case 'no-sound':
      return isNamed(tracing, TOLD.sound);
    case 'burnt-seen':
      return hasShown(tracing, SHOWN.burnt);
    case 'short-to-follow':
      return !hasShown(tracing, SHOWN.noShort);
    case 'wet-seen':
      return isNamed(tracing, TOLD.leak) || hasShown(tracing, SHOWN.wet);
    case 'mains-doubtful':
      return isNamed(tracing, TOLD.mains);
    case 'standby-low':
      return hasShown(tracing, SHOWN.standbyLow);
    case 'outside-supply':
      return switches.includes('outside-supply');
    case 'watts-unknown':
      return machine.supplyWatts === null || machine.needsWatts === null;
    case 'part-added':
      return machine.newPart !== 'none' && ADDED.some((id) => tracing.told.changed.includes(id));
    case 'part-unknown':
      return machine.newPart === null && tracing.told.changed.includes(PART_CAME);
    case 'noise-told':
      return isNamed(tracing, TOLD.noise);
    case 'stays-on':
      return !isNamed(tracing, TOLD.goesOff);
    case 'board-speaks':
      return unless('code-none');
    case 'no-card':
      return machine.card === false;
    case 'drive-failing':
      return hasShown(tracing, SHOWN.failing);
    case 'plug-to-press':
      return maySinceHaveFailed(model, tracing) || hasShown(tracing, SHOWN.plugOff);
    case 'card-to-seat':
      return maySinceHaveFailed(model, tracing) || hasShown(tracing, SHOWN.cardLoose);
    case 'no-extortion':
      return !isNamed(tracing, TOLD.ransom);
    case 'after-our-work':
      return log.some((entry) => !entry.struck);
  }
}

function sweptClean(model: FaultModel, entry: LoggedStep): boolean {
  const step = knownStep(model, entry.step);
  return (
    step?.kind === 'sweep' && step.outcomes.some((one) => one.id === entry.outcome && one.meaning.means === 'works')
  );
}
