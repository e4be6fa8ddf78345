import { tracingCase } from '../../../../core/bench/tracingCase.ts';
import type { JobView } from '../../../../core/bench/tracingDoor.ts';
import type { PlanAhead, TracingSheet } from '../../../../core/contract/screens.ts';
import type { Part } from '../../../../core/custody/ledger.ts';
import type { Says } from '../../../../core/fit/reason.ts';
import { asTakenIn, fitsSomewhere } from '../../../../core/fit/whichSlot.ts';
import type { JobId } from '../../../../core/ids.ts';
import { loggedSoFar, offerAsOf, type Shown } from '../../../../core/job/bench/offerStands.ts';
import type { EpochMs } from '../../../../core/time.ts';
import type { TracingCase } from '../../../../core/tracing/live/types.ts';
import type { Reader } from '../../../../db/index.ts';
import type { Engine } from '../estimating/engine.ts';
import { loadView } from '../loadView.ts';
import { shopParts } from './shopParts.ts';

/**
 * The job's state with every loaner of the wall beside it; null when there is no such job. `ours`: the shop's parts, where
 * they were looked up already.
 */
export async function benchState(
  read: Reader,
  job: JobId,
  at: EpochMs,
  how: { readonly shown?: Shown | undefined; readonly ours?: readonly Part[] } = {},
): Promise<{ readonly view: JobView; readonly state: TracingCase; readonly asOf: EpochMs } | null> {
  const loaded = await loadView(read, { job }, at);
  if (!loaded.job) return null;
  const parts = new Map(loaded.parts);
  for (const part of how.ours ?? (await shopParts(read, at))) parts.set(part.id, part);
  const view: JobView = { ...loaded, job: loaded.job, parts };
  const asOf = offerAsOf(view.job, how.shown, at, view.shop.settings?.zone ?? 'UTC');
  return { view, state: tracingCase(view, fitsThis(view), asOf), asOf };
}

/** Would a shop part go into one of the slots that its kind has in this machine? Unknown stays unknown. */
function fitsThis({ machine, parts }: JobView): (part: Part) => Says {
  if (!machine) return () => 'unknown';
  const asItCame = asTakenIn(machine, parts);
  return (part) => fitsSomewhere(part, asItCame);
}

/** How the engine is asked, as of when, and what stands on the screen that asks. */
type TracingAsked = {
  readonly method: 'ratio' | 'rollout';
  readonly shown?: Shown | undefined;
  readonly at: EpochMs;
  readonly signal?: AbortSignal | undefined;
};

/**
 * What the engine says of a job now, or as of when the step on screen was chosen while nothing was logged since; null
 * when there is no such job.
 */
export async function tracingSheet(
  read: Reader,
  engine: Engine,
  job: JobId,
  { method, shown, at, signal }: TracingAsked,
): Promise<(TracingSheet & Shown) | null> {
  const bench = await benchState(read, job, at, { shown });
  if (!bench) return null;
  const sheet = await engine.tracing(bench.view.shop, bench.state, method, signal);
  return { ...sheet, asOf: bench.asOf, logged: loggedSoFar(bench.view.job) };
}

/** What would follow the step on offer, and what each remedy would cost the owner; null when there is no such job. */
export async function planSheet(
  read: Reader,
  engine: Engine,
  job: JobId,
  at: EpochMs,
  signal?: AbortSignal,
): Promise<PlanAhead | null> {
  const bench = await benchState(read, job, at);
  if (!bench) return null;
  const { view, state } = bench;
  return engine.plan(view.shop, state, view.job.perMinuteMinor, signal);
}
