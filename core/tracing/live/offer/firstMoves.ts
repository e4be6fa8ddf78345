import { assemblyOf, opensOf } from '../assembly.ts';
import { cameRunning, isShaken, lifeNow } from '../gates/life.ts';
import { type Ready, undone } from '../gates/ready.ts';
import { hasShown } from '../gates/shown.ts';
import { knownStep, LOG_READ, WATCH_START } from '../model/special.ts';
import type { UsedIds } from '../model/usedIds.ts';
import { groupsSeen, groupsTold } from '../readGroups.ts';
import type { FaultModel, Group, LoggedStep, Step, StepId } from '../types.ts';
import { changedFirst } from './changedFirst.ts';
import { easierFirst } from './easierFirst.ts';
import { foundThen } from './foundThen.ts';

const LOOK = 'look-inside';
const LOOK_PICTURE = 'look-picture';
const PANEL = 'panel';
const LOOK_MAINS = 'look-mains';
const MAINS_OFF = 'mains-off';
/** From here on a switch or cord that is off is thought of before a screw is turned. Common practice, no source. */
const WORTH_A_GLANCE = 0.05;
/** Nothing that the eyes found is to be put right before it is started. */
const NOTHING_SEEN = { [LOOK]: ['clean', 'dust'] };

/** What is tried from outside before a screw is turned, by the first thing that was told. Common practice, no source. */
const OUTSIDE_FIRST: { readonly [group in Group]?: readonly StepId[] } = {
  'no-reaction': ['brick-measure', LOOK_MAINS],
  'no-picture': ['look-picture'],
  'no-system': ['strip-outside'],
  'stops-starting': ['strip-outside'],
};

/** What a machine that runs is asked itself first, by the first thing that was told. Common practice, no source. */
const ASKED_ITSELF: { readonly [group in Group]?: StepId } = {
  software: 'drive-health',
  drives: 'drive-health',
  'fails-in-use': LOG_READ,
};
/** As the picture goes wrong here, it is looked at before the system starts; and where none comes, on our own screen. */
const SEEN_FIRST: { readonly [group in Group]?: StepId } = {
  'picture-wrong': 'early-picture',
  'no-picture': 'look-picture',
};
/** One suspect as likely as this is gone after by itself. Common practice, no source. */
const ONE_ALONE = 0.9;
/** To write is asked for once the disk is known to be well. */
const ASK_TO_WRITE = 'ask-write';
/** What fails only under load, and not by its own log's word, is loaded one part at a time before hands go in. */
const LOADS: readonly StepId[] = ['load-card', 'load-cpu'];
const LOG_SAYS_NOTHING = { [LOG_READ]: ['nothing'] };
/** What they go by. */
export const FIRST_MOVES: UsedIds = {
  steps: [
    ...[LOOK_MAINS, LOOK_PICTURE, ASK_TO_WRITE, ...LOADS],
    ...Object.values(OUTSIDE_FIRST).flat(),
    ...Object.values(ASKED_ITSELF),
    ...Object.values(SEEN_FIRST),
  ],
  shown: { ...NOTHING_SEEN, ...LOG_SAYS_NOTHING },
  faults: [MAINS_OFF],
  states: [PANEL],
};
/** Where the owner's own system runs, its disk works. */
const OWN_SYSTEM = 'start-own';
/** Minutes from which a step is long: nobody minds a look of two. Common practice, no source. */
const LONG = 3;

/**
 * What every technician does before any plan: does what was just found asks for, sees the trouble for himself, tries it
 * as it was before, tries from outside what stands outside, and looks before hands go in. Answers the place of the step
 * that comes before the planned one (`at`), else that one's own; negative: none. `wanted`: what the
 * planned one only opens the way to.
 */
export function firstMoves(ready: Ready, at: number, wanted: Step | undefined): number {
  const { steps } = ready;
  const planned = steps[at];
  if (!planned) return at;
  const first =
    planned.kind === 'ask'
      ? askIt(ready, planned)
      : (foundThen(ready, planned) ??
        seeIt(ready, planned) ??
        changedFirst(ready, planned) ??
        askIt(ready, planned) ??
        loadIt(ready, planned) ??
        outside(ready, planned) ??
        eyes(ready, planned) ??
        easierFirst(ready, wanted ?? planned));
  const place = steps.findIndex(({ id }) => id === first);
  return place < 0 ? at : place;
}

const wasStarted = ({ tracing }: Ready): boolean =>
  tracing.log.some((entry) => !entry.struck && entry.step === WATCH_START);

/**
 * A machine that runs is started before anything else is done, but where its disk must not be worked; any other once it was
 * looked into, and nothing was seen there that is to be put right first. What happened to it may ask for that look.
 */
function seeIt(ready: Ready, planned: Step): StepId | null {
  const { model, tracing } = ready;
  if (wasStarted(ready)) return null;
  const spared = model.symptoms.some(({ id, copyFirst }) => copyFirst && tracing.told.symptoms.includes(id));
  const start = cameRunning(model, tracing) || hasShown(tracing, NOTHING_SEEN) ? undone(ready, WATCH_START) : null;
  if (start !== null && !spared) return start;
  // The first start is on our own screen: of what runs dark that is no step of its own.
  if (planned.id === LOOK_PICTURE && firstGroups(ready).includes('no-post')) return undone(ready, LOOK);
  return planned.starts && isShaken(model, tracing) ? undone(ready, LOOK) : null;
}

/** What runs is asked itself before it is opened, loaded or written on: its disk's own health, or what its own log says. */
function askIt(ready: Ready, planned: Step): StepId | null {
  const { model, tracing, suspects } = ready;
  const deep =
    planned.kind === 'load' ||
    planned.kind === 'software' ||
    planned.needs.includes(OWN_SYSTEM) ||
    planned.id === ASK_TO_WRITE ||
    planned.open.length > 0 ||
    planned.handsOn >= LONG ||
    isOpened(ready, planned);
  if (!wasStarted(ready) || !deep || tracing.log.some((entry) => isTrial(model, entry))) return null;
  if (suspects.some(({ p }) => p >= ONE_ALONE)) return null;
  const seen = groupsSeen(model, tracing);
  const told = firstGroups(ready).filter((group) => seen.includes(group) || seen.includes('not-shown'));
  const asked = [
    ...(planned.kind === 'look' ? [] : seen.flatMap((group) => SEEN_FIRST[group] ?? [])),
    ...told.flatMap((group) => ASKED_ITSELF[group] ?? []),
  ];
  return asked.map((id) => undone(ready, id)).find((id) => id !== null) ?? null;
}

/** Something was tried, loaded or changed: from there on it is the plan's. */
const TRIALS: readonly Step['kind'][] = ['load', 'swap', 'rig', 'software', 'reseat', 'clean', 'setting'];

const isTrial = (model: FaultModel, { struck, step: id }: LoggedStep): boolean => {
  const step = struck ? undefined : knownStep(model, id);
  return step !== undefined && TRIALS.includes(step.kind);
};

const UNDER_LOAD = 'load';

function loadIt(ready: Ready, planned: Step): StepId | null {
  const { tracing } = ready;
  if (!tracing.told.onlyWhen.includes(UNDER_LOAD) || !hasShown(tracing, LOG_SAYS_NOTHING)) return null;
  if (planned.kind === 'load' || !isOpened(ready, planned)) return null;
  return LOADS.find((id) => undone(ready, id) !== null) ?? null;
}

/** The groups that the terms told mean first. */
function firstGroups({ model, tracing }: Ready): readonly Group[] {
  const { symptoms } = tracing.told;
  const firsts = symptoms.flatMap((id) => model.symptoms.find((one) => one.id === id)?.groups[0] ?? []);
  return groupsTold(model, symptoms).filter((group) => firsts.includes(group));
}

const isOpened = ({ model, tracing, open }: Ready, planned: Step): boolean =>
  open.includes(PANEL) || opensOf(assemblyOf(model, tracing.switches), planned).includes(PANEL);

/** Before the first screw: what was told is tried from outside; not where a word asks for the look first. */
function outside(ready: Ready, planned: Step): StepId | null {
  const { model, tracing, suspects, open } = ready;
  if (open.includes(PANEL) || !isOpened(ready, planned)) return null;
  const { symptoms } = tracing.told;
  if (model.symptoms.some(({ id, stop }) => stop && symptoms.includes(id))) return null;
  const told = firstGroups(ready)
    .flatMap((group) => OUTSIDE_FIRST[group] ?? [])
    .find((id) => undone(ready, id) !== null);
  if (told !== undefined) return told;
  const off = suspects.find(({ fault }) => fault === MAINS_OFF)?.p ?? 0;
  return off >= WORTH_A_GLANCE && lifeNow(model, tracing) !== 'system' ? undone(ready, LOOK_MAINS) : null;
}

/**
 * Once a machine that does not run as far as its system is opened, the eyes come before the hands, whatever the plan opens
 * it for, or opened it already: the look at all places in one go.
 */
const eyes = (ready: Ready, planned: Step): StepId | null =>
  isOpened(ready, planned) && lifeNow(ready.model, ready.tracing) !== 'system' ? undone(ready, LOOK) : null;

/** With nothing done and nothing seen, the look inside or the first start comes before any word about what it is worth: its place in the list; -1: neither is in it. */
export function firstLook(steps: readonly Step[]): number {
  const look = steps.findIndex(({ id }) => id === LOOK);
  return look >= 0 ? look : steps.findIndex(({ id }) => id === WATCH_START);
}
