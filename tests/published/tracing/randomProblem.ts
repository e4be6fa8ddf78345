import type { Exchange, ExchangeState, ExchangeStep } from './exchange.ts';

/** Numbers that look random and are the same for the same seed (a 32-bit mixing generator, period 2^32). */
export type Dice = { readonly next: () => number; readonly whole: (from: number, to: number) => number };

export function diceOf(seed: number): Dice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return { next, whole: (from, to) => from + Math.floor(next() * (to - from + 1)) };
}

export type Mix = {
  readonly faults: readonly [number, number];
  readonly steps: readonly [number, number];
  readonly states: readonly [number, number];
  /** Share of steps that only tell something. */
  readonly observations: number;
  /** Chance of harm, of finishing minutes, of waiting, of a step that needs something closed, of a third outcome. */
  readonly extras: number;
};

const tenth = (value: number): number => Math.round(value * 10) / 10;

/** A made-up tracing problem. */
export function randomProblem(seed: number, mix: Mix): Exchange {
  const dice = diceOf(seed);
  const faults = Array.from({ length: dice.whole(...mix.faults) }, (_, at) => ({
    id: `f${at + 1}`,
    weight: -Math.log(1 - dice.next()) + 0.01,
  }));
  const assembly = randomTree(dice, dice.whole(...mix.states));
  const count = dice.whole(...mix.steps);
  const looks = Math.round(count * mix.observations);
  const kinds = Array.from({ length: count }, (_, at) => at < looks);
  for (let at = count - 1; at > 0; at--) {
    const other = dice.whole(0, at);
    [kinds[at], kinds[other]] = [kinds[other] as boolean, kinds[at] as boolean];
  }
  const ids = faults.map((fault) => fault.id);
  const steps = kinds.map((look, at) => {
    const step = look ? observation(dice, `s${at + 1}`, ids) : attempt(dice, `s${at + 1}`, ids, at, mix.extras);
    return { ...step, ...needs(dice, assembly, mix.extras), ...extras(dice, step, ids, mix.extras) };
  });
  return { faults, assembly, steps, waitingWeight: 0.25, handOver: dice.whole(40, 200) };
}

function randomTree(dice: Dice, count: number): ExchangeState[] {
  return Array.from({ length: count }, (_, at) => ({
    id: `a${at + 1}`,
    opening: tenth(0.5 + 8 * dice.next()),
    closing: tenth(0.5 + 8 * dice.next()),
    within: at > 0 && dice.next() < 0.6 ? `a${dice.whole(1, at)}` : null,
  }));
}

function observation(dice: Dice, id: string, faults: readonly string[]): ExchangeStep {
  const rows = faults.map((fault) => {
    const chance = dice.next() < 0.5 ? 0.02 + 0.18 * dice.next() : 0.8 + 0.18 * dice.next();
    return [fault, [chance, 1 - chance]] as [string, number[]];
  });
  return { id, minutes: tenth(0.5 + 7 * dice.next()), outcomes: ['yes', 'no'], chance: Object.fromEntries(rows) };
}

function attempt(dice: Dice, id: string, faults: readonly string[], at: number, extra: number): ExchangeStep {
  const three = dice.next() < extra / 2;
  const cured = new Set([faults[at % faults.length] as string]);
  while (dice.next() < 0.35) cured.add(faults[dice.whole(0, faults.length - 1)] as string);
  const row = (works: number): number[] => (three ? [works, (1 - works) * 0.8, (1 - works) * 0.2] : [works, 1 - works]);
  const rows = faults.map((fault) => {
    const works = cured.has(fault) ? 0.7 + 0.3 * dice.next() : 0;
    if (!three || works > 0) return [fault, row(works)] as const;
    const worse = 0.4 * dice.next();
    return [fault, [0, 1 - worse, worse]] as const;
  });
  return {
    id,
    minutes: tenth(1 + 19 * dice.next()),
    outcomes: three ? ['works', 'same', 'worse'] : ['works', 'same'],
    cures: ['works'],
    chance: Object.fromEntries(rows),
  };
}

function needs(dice: Dice, assembly: readonly ExchangeState[], extra: number): Partial<ExchangeStep> {
  if (assembly.length === 0 || dice.next() < 0.35) return {};
  const state = assembly[dice.whole(0, assembly.length - 1)] as ExchangeState;
  if (dice.next() < extra / 2) return { closed: [state.id] };
  const second = assembly[dice.whole(0, assembly.length - 1)] as ExchangeState;
  return { open: dice.next() < extra / 2 && second !== state ? [state.id, second.id] : [state.id] };
}

function extras(dice: Dice, step: ExchangeStep, faults: readonly string[], extra: number): Partial<ExchangeStep> {
  const harmed =
    dice.next() < extra / 2
      ? { harm: { [faults[dice.whole(0, faults.length - 1)] as string]: dice.whole(5, 120) } }
      : {};
  const finished = dice.next() < extra && step.cures ? { finish: { works: dice.whole(1, 20) } } : {};
  return { ...(dice.next() < extra ? { waiting: dice.whole(1, 30) } : {}), ...harmed, ...finished };
}
