import { stepStates } from '../../../core/tracing/cases/answer/stepStates.ts';
import { afterEntry } from '../../../core/tracing/cases/bench/logged.ts';
import { toTracing } from '../../../core/tracing/cases/bench/toTracing.ts';
import type { CaseLine } from '../../../core/tracing/cases/form/caseLine.ts';
import { suspectsOf } from '../../../core/tracing/live/belief/belief.ts';
import { posteriorOf } from '../../../core/tracing/live/belief/posterior.ts';
import type { FaultModel, TracingCase } from '../../../core/tracing/live/types.ts';
import type { Breach } from '../breach.ts';
import { caseEntry, caseStep } from '../caseNames.ts';
import { leftOpen } from '../judge.ts';
import type { Unsaid } from '../proposal.ts';
import type { RefereeState } from '../state.ts';
import { doingsOf } from '../stepTable.ts';
import type { Draw } from './drawMachine.ts';

/** A breach that a log position leaves open, or that the planner proposes. */
export type Found = {
  readonly step: string;
  readonly open: 'offered' | 'own-word' | 'proposed';
  readonly breach: Breach | Unsaid;
};

/** A log position and all that it leaves open to be begun against a sentence of the referee. */
export type Position = { readonly log: readonly string[]; readonly found: readonly Found[] };

/** Entries of a log, at most: later ones repeat what is known. */
const LONGEST = 12;
/** Steps that change what may be done next; without a push most logs would be of swaps. */
const TELLING =
  /^(look-inside|meas-|short-|supply-alone|drive-(health|dock|read|image)|mem-|log-read|feel-heat|cpu-look|under-look|census|wet-clean|fan-look|leak-source|burnt-|earth-|cell-|ask-|watch-start|drives-off|card-none|supply-beside)/;

/** Walks one machine through a log drawn step by step, and judges every position on the way, the empty log first. */
export function* walk(model: FaultModel, line: CaseLine, draw: Draw): Generator<Position> {
  const bench = toTracing(model, line);
  if ('is' in bench) throw new Error(`a drawn machine is no case: ${JSON.stringify(bench)}`);
  let tracing: TracingCase = bench.tracing;
  const log: string[] = [];
  for (;;) {
    const { position, open } = judged(model, line, tracing, log);
    yield position;
    const step = nextStep(model, open, draw);
    if (log.length >= LONGEST || step === null) return;
    const outcome = draw.chance(0.35)
      ? (step.outcomes[step.normal] ?? draw.oneOf(step.outcomes))
      : draw.oneOf(step.outcomes);
    const entry = `${step.id}:${outcome.id}`;
    const after = afterEntry(model, tracing, entry);
    if ('is' in after) throw new Error(`a drawn entry is none: ${entry}`);
    log.push(entry);
    tracing = step.id === 'watch-start' ? { ...after, seen: line.seen } : after;
  }
}

/** A step that came later than the step table: nothing can be said of it, and a run must not pass it over. */
const UNREAD: Unsaid = { rule: 'unread', says: 'Nobody has read yet what is done in this step.', harm: 'said' };

type Judged = { readonly position: Position; readonly open: readonly string[] };

function judged(model: FaultModel, line: CaseLine, tracing: TracingCase, log: readonly string[]): Judged {
  const suspects = suspectsOf(model, posteriorOf(model, tracing));
  const { steps } = stepStates(model, tracing, suspects);
  const state = refereeState(line, tracing, suspects);
  const open: string[] = [];
  const found: Found[] = [];
  for (const { id, state: stands } of steps) {
    if (stands !== 'offered' && stands !== 'own-word') continue;
    open.push(id);
    const step = caseStep(id);
    const wrong = doingsOf(step) === undefined ? [UNREAD] : leftOpen(state, step, stands);
    for (const breach of wrong) found.push({ step: id, open: stands, breach });
  }
  return { position: { log: [...log], found }, open };
}

/** A tracing as the referee sees it: what was told, seen and logged, what the machine is, and what is believed. */
export function refereeState(
  line: CaseLine,
  tracing: TracingCase,
  suspects: readonly { readonly fault: string; readonly p: number }[],
): RefereeState {
  return {
    told: line.told.symptoms,
    changed: line.told.changed,
    seen: tracing.seen,
    machine: line.machine,
    agreed: tracing.agreed,
    log: tracing.log.map(({ step, outcome }) => caseEntry({ step, outcome })),
    believed: Object.fromEntries(suspects.map(({ fault, p }) => [fault, p])),
  };
}

function nextStep(model: FaultModel, open: readonly string[], draw: Draw) {
  const telling = open.filter((id) => TELLING.test(caseStep(id)));
  const from = telling.length > 0 && draw.chance(0.5) ? telling : open;
  if (from.length === 0) return null;
  return model.steps[model.stepIndex.get(draw.oneOf(from)) ?? -1] ?? null;
}
