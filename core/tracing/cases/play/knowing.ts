import { assemblyOf, closingMinutes, movesBefore } from '../../live/assembly.ts';
import { whyNotOffered } from '../../live/gates/available.ts';
import { askFor, lackingWords } from '../../live/gates/ownersWords.ts';
import { PUT_BACK, stepOf, WATCH_START } from '../../live/model/special.ts';
import { openStates } from '../../live/offer/openStates.ts';
import { handsOnOf } from '../../live/problem/weights.ts';
import type { FaultModel, Outcome, Step, TracingCase } from '../../live/types.ts';
import { endsWhenFound } from '../../live/verdict/blame.ts';
import { afterEntry } from '../bench/logged.ts';
import { toTracing } from '../bench/toTracing.ts';
import type { BenchCase } from '../form/benchCase.ts';
import { stepNamed } from '../ids/names.ts';
import { Answerer } from './answerer.ts';

/** Steps that open one another no deeper than this. */
const DEEPEST = 4;

/** One way of doing things to a case's machine: the log so far, and its minutes. */
type Way = { readonly tracing: TracingCase; readonly machine: Answerer; readonly minutes: number };

/**
 * The least hands-on minutes, by the model's own, of one who knows what is wrong: the cheapest step that proves or mends
 * each fault, with all that gates, words and the end itself ask for first, openings and closings in it. Null where no
 * step of the model does: it has no such fault, or nothing is to be mended.
 */
export function minutesKnowing(model: FaultModel, bench: BenchCase): number | null {
  const start = (): Way | null => {
    const now = toTracing(model, bench);
    return 'is' in now ? null : { tracing: now.tracing, machine: new Answerer(model, bench), minutes: 0 };
  };
  const first = start();
  if (!first) return null;
  const truths = truthsOf(bench);
  const owed = bench.end.after.flatMap((one) => (typeof one === 'string' ? [one] : one.slice(0, 1)));
  const owedSteps = owed.flatMap((what) => stepFor(model, what.split(':')[0] ?? ''));
  let least: number | null = null;
  for (const last of model.steps.filter((step) => isAbout(model, bench, step, truths))) {
    const way = start();
    const ended = way && settles(model, bench, way, [...owedSteps, last], truths);
    if (ended && (least === null || ended < least)) least = ended;
  }
  return least;
}

const truthsOf = ({ truth }: BenchCase): readonly string[] =>
  truth.faults.flatMap((one) => (typeof one === 'string' ? one : (one.like ?? [])));

/** Could this step prove or mend one of these faults at all: by what it finds, takes out, puts on the rig or does? */
function isAbout(model: FaultModel, { answers }: BenchCase, step: Step, truths: readonly string[]): boolean {
  const circuits = [...step.takesOut, ...(step.onRig ?? [])];
  return (
    (answers.mended ?? []).flat().some((id) => stepFor(model, id)[0]?.id === step.id) ||
    truths.some((id) => (step.mends[id] ?? step.mendsAfter[id] ?? 0) > 0) ||
    step.outcomes.some(({ meaning }) => meaning.means === 'evidence' && proves(model, meaning.of, truths)) ||
    model.faults.some((fault) => truths.includes(fault.id) && fault.circuits.some((one) => circuits.includes(one)))
  );
}

/** What is to be cleaned, seated or set is not at its end when it was found. */
const proves = (model: FaultModel, of: readonly string[], truths: readonly string[]): boolean =>
  model.faults.some((fault) => of.includes(fault.id) && truths.includes(fault.id) && endsWhenFound(fault));

const stepFor = (model: FaultModel, id: string): readonly Step[] => {
  const named = stepNamed(model, id);
  return named.is === 'here' ? [named.step] : [];
};

/** Minutes to do these steps, the last of which proves or mends what is wrong, closed up again; null where it does not. */
function settles(
  model: FaultModel,
  bench: BenchCase,
  from: Way,
  steps: readonly Step[],
  truths: readonly string[],
): number | null {
  const last = steps.at(-1);
  if (!last) return null;
  let way: Way | null = from;
  for (const step of steps) way = way && done(model, bench, way, step, 0);
  const outcome = way && outcomeOf(way.tracing, last);
  if (!way || !outcome) return null;
  const means = outcome.meaning.means;
  if (shows(model, last, outcome, truths) || (means === 'works' && way.machine.mended)) return closed(model, way);
  const taken = model.faults.some(
    ({ id, circuits }) => truths.includes(id) && circuits.some((circuit) => last.takesOut.includes(circuit)),
  );
  const back = stepOf(model, PUT_BACK);
  if (means !== 'works' || !taken) return null;
  const again = done(model, bench, way, back, 0);
  return again && closed(model, again);
}

const closed = (model: FaultModel, { tracing, minutes }: Way): number =>
  minutes + closingMinutes(assemblyOf(model, tracing.switches), openStates(model, tracing));

function outcomeOf({ log }: TracingCase, step: Step): Outcome | undefined {
  const entry = log.findLast((one) => one.step === step.id);
  return step.outcomes.find(({ id }) => id === entry?.outcome);
}

/** Does this outcome prove one of the true faults: by itself, or on the rig? */
function shows(model: FaultModel, step: Step, { meaning }: Outcome, truths: readonly string[]): boolean {
  if (meaning.means === 'evidence') return proves(model, meaning.of, truths);
  if (meaning.means !== 'fails-on-rig') return false;
  return model.faults.some(
    ({ id, circuits }) => truths.includes(id) && circuits.some((circuit) => step.onRig?.includes(circuit)),
  );
}

/** One step done, and before it whatever opens it; null where that cannot be. */
function done(model: FaultModel, bench: BenchCase, way: Way, step: Step, depth: number): Way | null {
  // Who knows what is wrong believes just that.
  const believed = truthsOf(bench).map((fault) => ({ fault, p: 1, mended: 0, comesAndGoes: 0 }));
  let now = way;
  for (let tries = 0; tries <= DEEPEST; tries++) {
    const why = whyNotOffered(model, now.tracing, step, believed);
    if (why === null || why.is === 'other-group' || why.is === 'life') return does(model, bench, now, step);
    const openers =
      why.is === 'gate'
        ? why.firstDo.flatMap((id) => stepFor(model, id))
        : why.is === 'word'
          ? lackingWords(model, now.tracing, step).flatMap((word) => askFor(model.steps, word) ?? [])
          : [];
    if (openers.length === 0 || depth >= DEEPEST) return null;
    for (const opener of openers) {
      const opened = done(model, bench, now, opener, depth + 1);
      if (!opened) return null;
      now = opened;
    }
  }
  return null;
}

function does(model: FaultModel, bench: BenchCase, { tracing, machine, minutes }: Way, step: Step): Way | null {
  const { moves } = movesBefore(assemblyOf(model, tracing.switches), openStates(model, tracing), step);
  const outcome = machine.does(tracing, step.id);
  const after = afterEntry(model, tracing, `${step.id}:${outcome}`);
  if ('is' in after) return null;
  return {
    tracing: step.id === WATCH_START ? { ...after, seen: bench.seen } : after,
    machine,
    minutes: minutes + handsOnOf(model, tracing, step) + moves.reduce((sum, move) => sum + move.minutes, 0),
  };
}
