import { assemblyOf, opensOf } from '../assembly.ts';
import { cameOf } from '../cameOf.ts';
import { WATCH_START } from '../model/special.ts';
import { groupsTold } from '../readGroups.ts';
import type { Group, OutcomeId, Step, StepId } from '../types.ts';
import { changedFirst } from './changedFirst.ts';
import { cameRunning, isShaken, lifeNow } from './life.ts';
import { type Ready, undone } from './ready.ts';
import { hasShown } from './shown.ts';

const LOOK = 'look-inside';
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
  'fails-in-use': 'log-read',
};
/** One suspect as likely as this is gone after by itself. */
const ONE_ALONE = 0.7;
/** Minutes from which a step is long. */
const LONG = 3;

/** What the eyes found out of its place, and what puts it right. Common practice, no source. */
const LOOSE: { readonly [seen: OutcomeId]: readonly StepId[] } = {
  'plug-off': ['press-plugs'],
  'memory-up': ['dimm-press'],
  'card-loose': ['card-seat'],
  'cooler-loose': ['cool-again', 'cpu-again', 'cool-even'],
  'lead-in-fan': ['fan-free'],
};

/**
 * What every technician does before any plan: puts right what was just seen loose, sees the trouble for himself, tries it
 * as it was before, tries from outside what stands outside, and looks before hands go in. Answers the place of the step
 * that comes before the planned one (`at`), else that one's own; negative: none.
 */
export function firstMoves(ready: Ready, at: number): number {
  const { steps } = ready;
  const planned = steps[at];
  if (!planned || planned.kind === 'ask') return at;
  const first =
    putRight(ready) ??
    seeIt(ready, planned) ??
    changedFirst(ready, planned) ??
    askIt(ready, planned) ??
    outside(ready, planned) ??
    eyes(ready, planned);
  const place = steps.findIndex(({ id }) => id === first);
  return place < 0 ? at : place;
}

/** What was just seen loose is put right before anything else is done. */
function putRight({ tracing, steps }: Ready): StepId | null {
  const last = tracing.log.findLast((entry) => !entry.struck);
  if (last?.step !== LOOK) return null;
  const rights = cameOf(last).flatMap((seen) => LOOSE[seen] ?? []);
  return rights.find((id) => steps.some((step) => step.id === id)) ?? null;
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
  return planned.starts && isShaken(model, tracing) ? undone(ready, LOOK) : null;
}

/** What runs is asked itself before it is opened, loaded or written on: its disk's own health, or what its own log says. */
function askIt(ready: Ready, planned: Step): StepId | null {
  const { model, tracing, suspects, open } = ready;
  const deep =
    planned.kind === 'load' ||
    planned.kind === 'software' ||
    planned.open.length > 0 ||
    planned.handsOn >= LONG ||
    isOpened(ready, planned);
  if (!wasStarted(ready) || open.includes(PANEL) || !deep || lifeNow(model, tracing) !== 'system') return null;
  if (suspects.some(({ p }) => p >= ONE_ALONE)) return null;
  const asked = firstGroups(ready).flatMap((group) => ASKED_ITSELF[group] ?? []);
  return asked.map((id) => undone(ready, id)).find((id) => id !== null) ?? null;
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
