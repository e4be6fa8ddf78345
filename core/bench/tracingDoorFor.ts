import type { PartId } from '../ids.ts';
import { taskIn } from '../labour/tasks/agreedTask.ts';
import type { Stage } from '../stage.ts';
import { minutes } from '../time.ts';
import type { LiveTracing } from '../tracing/live/api.ts';
import { suspectsOf } from '../tracing/live/belief/belief.ts';
import { posteriorOf } from '../tracing/live/belief/posterior.ts';
import { leftAfter, leftOutAfter } from '../tracing/live/configuration.ts';
import { COULD_NOT } from '../tracing/live/couldNot.ts';
import { whyNot } from '../tracing/live/gates/available.ts';
import { closedGates, gatesNow, type HoldingGate, openedByNoWord } from '../tracing/live/gates/gates.ts';
import { owedNow } from '../tracing/live/gates/owed.ts';
import { lackingWords } from '../tracing/live/gates/ownersWords.ts';
import { circuitsOf, maskOf } from '../tracing/live/model/circuits.ts';
import { dangersOf, deedsNow } from '../tracing/live/safety/deeds.ts';
import { modelInUse } from '../tracing/live/shop/shopModel.ts';
import type { FaultModel, TracingCase } from '../tracing/live/types.ts';
import { isBackIn } from './backIn.ts';
import { replaced } from './replaced.ts';
import { loanerProof, tracingCase } from './tracingCase.ts';
import type { JobView, OpenGate, TracingDoor } from './tracingDoor.ts';

/** A fault below this chance is no longer a suspect that a loaner was exposed to. Common practice, no source. */
const STILL_SUSPECT = 0.01;

/** The suspects by single faults: quick, and enough for gates and exposure. */
const suspectsNow = (model: FaultModel, tracing: TracingCase) => suspectsOf(model, posteriorOf(model, tracing, false));

const AFTER_TRACING: readonly Stage[] = ['fitting', 'proving', 'ready', 'home-as-it-came'];

const asOpen = ({ gate, firstDo }: HoldingGate): OpenGate => ({
  gate: gate.id,
  first: firstDo,
  ownWord: !openedByNoWord(gate),
});

function loanerStandingOf(view: JobView, id: PartId) {
  const part = view.parts.get(id);
  return part ? loanerProof(part) : null;
}

/** The job's door to the tracing engine, with one fault model behind it. */
export function tracingDoorFor(live: LiveTracing, model: FaultModel): TracingDoor {
  const find = (id: string) => model.steps.find((step) => step.id === id);
  const caseOf = (view: JobView) => tracingCase(view);
  return {
    rules: (id) => {
      const step = find(id);
      return step
        ? {
            id,
            handsOn: minutes(step.handsOn),
            outcomes: [...step.outcomes.map((outcome) => outcome.id), COULD_NOT],
            places: step.places,
            means: Object.fromEntries(step.outcomes.map(({ id: outcome, meaning }) => [outcome, meaning.means])),
            triedWithout: step.takesOut,
            gives: Object.fromEntries(step.outcomes.map(({ id: outcome, gives }) => [outcome, gives])),
            oneByOne: step.kind === 'measure' && step.handling.movesDimms,
            handling: step.handling,
          }
        : null;
    },
    lacking: (view, id) => {
      const step = find(id);
      return step ? lackingWords(model, caseOf(view), step) : [];
    },
    gates: (view, step, loaner) => {
      const tracing = caseOf(view);
      const standing = loaner ? loanerStandingOf(view, loaner) : null;
      const held = find(step);
      if (!held) return [];
      return closedGates(model, tracing, held, suspectsNow(model, tracing), standing).map(asOpen);
    },
    gatesOfWork: (view, kind, what) => {
      const { deeds } = dangersOf(model, kind, taskIn(what).id);
      if (deeds.length === 0) return [];
      const tracing = caseOf(view);
      const { forGood, out } = leftAfter(model, tracing.log);
      const stillOut = circuitsOf(out).filter((circuit) => !isBackIn(view, circuit));
      const without = forGood | maskOf(stillOut) | replaced(view);
      // The mains came off for the tracing long ago.
      const now = AFTER_TRACING.includes(view.job.stage) ? deeds.filter((deed) => deed !== 'mains-pulled') : deeds;
      return gatesNow(model, tracing, suspectsNow(model, tracing))
        .of({ step: null, does: () => deedsNow(now, without), out: () => without }, null)
        .map(asOpen);
    },
    leftOut: (view, id, stay) => {
      const step = find(id);
      if (!step) return [];
      const after = leftOutAfter(model, caseOf(view), step, stay);
      return after.filter((circuit) => step.takesOut.includes(circuit) || !isBackIn(view, circuit));
    },
    suspects: (view) =>
      suspectsNow(model, caseOf(view))
        .filter((suspect) => suspect.p >= STILL_SUSPECT)
        .map((suspect) => suspect.fault),
    fault: (id) => {
      const known = model.faults.find((one) => one.id === id);
      return known ? { part: known.part, oneOf: known.oneOf ?? null } : null;
    },
    likeliest: (view) => {
      const [first] = suspectsNow(model, { ...caseOf(view), hunch: null });
      return first && first.p > 0 ? { fault: first.fault, p: first.p } : null;
    },
    harms: (fault, kind) =>
      model.steps.some((step) =>
        step.harm.some(
          (harm) => harm.whose !== 'owner' && harm.fault === fault && harm.part === kind && harm.chance > 0,
        ),
      ),
    owed: (view) => {
      const tracing = caseOf(view);
      const suspects = suspectsNow(model, tracing);
      return owedNow(model, tracing, suspects, whyNot(model, tracing, suspects));
    },
    verdict: (view) => live.verdictAfter(model, caseOf(view)),
    refusesModel: (changes) => modelInUse({ changes, learnt: null }).refused,
    differ: (told, seen) => live.compareToldSeen(model, told, seen).differ,
  };
}
