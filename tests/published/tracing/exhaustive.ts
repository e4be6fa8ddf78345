import type { Exchange, ExchangeState, ExchangeStep, WrittenPolicy } from './exchange.ts';

/**
 * The cheapest expected minutes by trying everything: every step, every outcome, every order, by plain recursion on the
 * file itself. Nothing is remembered, nothing is shared with the planner. Openings are found by trying all sequences of
 * single moves. Slow: six steps or so.
 */
export function exhaustiveMinutes(problem: Exchange): number {
  const total = problem.faults.reduce((sum, fault) => sum + fault.weight, 0);
  const belief = new Map(problem.faults.map((fault) => [fault.id, fault.weight / total]));
  return cheapest(problem, problem.steps, belief, new Set());
}

function cheapest(
  problem: Exchange,
  left: readonly ExchangeStep[],
  belief: ReadonlyMap<string, number>,
  open: ReadonlySet<string>,
): number {
  const mass = massOf(belief);
  let best = mass * (problem.handOver + closeAll(problem, open));
  for (const step of left) {
    const others = left.filter((other) => other !== step);
    best = Math.min(
      best,
      doing(problem, step, belief, open, (after, openAfter) => cheapest(problem, others, after, openAfter)),
    );
  }
  return best;
}

/** Expected minutes × mass of doing a step now, `goOn` saying what follows an outcome that does not cure. */
function doing(
  problem: Exchange,
  step: ExchangeStep,
  belief: ReadonlyMap<string, number>,
  open: ReadonlySet<string>,
  goOn: (after: ReadonlyMap<string, number>, open: ReadonlySet<string>, outcome: string) => number,
): number {
  const { minutes: moves, open: openNow } = cheapestMoves(problem.assembly ?? [], open, step);
  let minutes = massOf(belief) * (moves + step.minutes + (step.waiting ?? 0) * problem.waitingWeight);
  for (const [fault, share] of belief) minutes += share * (step.harm?.[fault] ?? 0);
  step.outcomes.forEach((outcome, at) => {
    const after = new Map([...belief].map(([fault, share]) => [fault, share * chanceOf(step, fault, at)]));
    const mass = massOf(after);
    if (mass === 0) return;
    if (step.cures?.includes(outcome)) minutes += mass * ((step.finish?.[outcome] ?? 0) + closeAll(problem, openNow));
    else minutes += goOn(after, openNow, outcome);
  });
  return minutes;
}

const massOf = (belief: ReadonlyMap<string, number>): number =>
  [...belief.values()].reduce((sum, share) => sum + share, 0);

function chanceOf(step: ExchangeStep, fault: string, at: number): number {
  const row = step.chance[fault] ?? step.chance['*'];
  if (!row) throw new Error(`no row for ${fault}`);
  return row[at] as number;
}

function closeAll(problem: Exchange, open: ReadonlySet<string>): number {
  return (problem.assembly ?? []).reduce((sum, state) => sum + (open.has(state.id) ? state.closing : 0), 0);
}

/** Shortest way from one arrangement to any in which the step can be done, move by move (Dijkstra over all of them). */
function cheapestMoves(
  states: readonly ExchangeState[],
  from: ReadonlySet<string>,
  step: ExchangeStep,
): { minutes: number; open: ReadonlySet<string> } {
  const name = (open: ReadonlySet<string>): string => [...open].sort().join();
  const found = new Map([[name(from), { minutes: 0, open: from, moves: 0 }]]);
  const settled = new Set<string>();
  for (;;) {
    const next = [...found]
      .filter(([id]) => !settled.has(id))
      .sort(([, a], [, b]) => a.minutes - b.minutes || a.moves - b.moves)[0];
    if (!next) throw new Error(`${step.id} can never be done`);
    const [id, { minutes, open, moves }] = next;
    if ((step.open ?? []).every((each) => open.has(each)) && (step.closed ?? []).every((each) => !open.has(each))) {
      return { minutes, open };
    }
    settled.add(id);
    for (const state of states) {
      const after = new Set(open);
      let cost: number;
      if (open.has(state.id)) {
        if (states.some((inner) => inner.within === state.id && open.has(inner.id))) continue;
        after.delete(state.id);
        cost = state.closing;
      } else {
        if (state.within !== null && !open.has(state.within)) continue;
        after.add(state.id);
        cost = state.opening;
      }
      const known = found.get(name(after));
      const better = { minutes: minutes + cost, open: after, moves: moves + 1 };
      if (!known || better.minutes < known.minutes) found.set(name(after), better);
    }
  }
}

/** Expected minutes of a policy exactly as written, step by step through the file. */
export function minutesOfPolicy(problem: Exchange, policy: WrittenPolicy): number {
  const total = problem.faults.reduce((sum, fault) => sum + fault.weight, 0);
  const walk = (at: WrittenPolicy, belief: ReadonlyMap<string, number>, open: ReadonlySet<string>): number => {
    if (at === 'done') throw new Error('done after an outcome that does not cure');
    if (at === 'hand over') return massOf(belief) * (problem.handOver + closeAll(problem, open));
    const step = problem.steps.find((each) => each.id === at.step);
    if (!step) throw new Error(`the policy names ${at.step}`);
    return doing(problem, step, belief, open, (after, openAfter, outcome) => {
      const then = at.then[outcome];
      if (then === undefined) throw new Error(`nothing is said for ${at.step}: ${outcome}`);
      return walk(then, after, openAfter);
    });
  };
  return walk(policy, new Map(problem.faults.map((fault) => [fault.id, fault.weight / total])), new Set());
}
