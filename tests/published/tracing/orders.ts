import { type Exchange, repair } from './exchange.ts';
import { diceOf } from './randomProblem.ts';
import { NEVER } from './solve.ts';

/** Every order there is. */
export function* ordersOf<T>(items: readonly T[]): Generator<readonly T[]> {
  if (items.length === 0) yield [];
  for (const first of items) {
    for (const rest of ordersOf(items.filter((other) => other !== first))) yield [first, ...rest];
  }
}

/** Expected minutes of a fixed order of sure repairs, openings paid when first needed, closings at the end. */
export function minutesOfOrder(problem: Exchange, order: readonly string[]): number {
  const total = problem.faults.reduce((sum, fault) => sum + fault.weight, 0);
  const open = new Set<string>();
  let left = 1;
  let expected = 0;
  let closing = 0;
  for (const id of order) {
    const step = problem.steps.find((each) => each.id === id);
    const fault = problem.faults.find((each) => each.id === id);
    let minutes = step?.minutes ?? 0;
    for (const name of step?.open ?? []) {
      const path = [];
      for (let at = problem.assembly?.find((each) => each.id === name); at; ) {
        path.push(at);
        const { within } = at;
        at = problem.assembly?.find((each) => each.id === within);
      }
      for (const state of path.filter((each) => !open.has(each.id))) {
        open.add(state.id);
        minutes += state.opening;
        closing += state.closing;
      }
    }
    const cured = (fault?.weight ?? 0) / total;
    expected += left * minutes + cured * closing;
    left -= cured;
  }
  return expected;
}

/** Made-up sure repairs of one fault each, seeded. */
export function sureRepairs(seed: number, within: 'no assembly' | 'one level' | 'two levels'): Exchange {
  const dice = diceOf(seed);
  const count = dice.whole(4, 7);
  const assembly =
    within === 'no assembly'
      ? []
      : [0, 1, 2].map((at) => ({
          id: `a${at}`,
          opening: dice.whole(1, 12),
          closing: dice.whole(0, 12),
          within: within === 'two levels' && at > 0 ? 'a0' : null,
        }));
  const ids = Array.from({ length: count }, (_, at) => `s${at}`);
  return {
    faults: ids.map((id) => ({ id, weight: 0.05 + dice.next() })),
    assembly,
    steps: ids.map((id) => {
      const state = assembly[dice.whole(0, 3)];
      return repair(id, dice.whole(1, 20), { [id]: 1 }, state ? { open: [state.id] } : {});
    }),
    waitingWeight: 1,
    handOver: NEVER,
  };
}

/** Most chance per minute first (Smith 1956). */
export function smithsOrder(problem: Exchange): string[] {
  return problem.steps
    .map((step, at) => ({ id: step.id, ratio: (problem.faults[at]?.weight ?? 0) / step.minutes }))
    .sort((a, b) => b.ratio - a.ratio)
    .map(({ id }) => id);
}
