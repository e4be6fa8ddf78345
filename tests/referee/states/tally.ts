import { z } from 'zod';
import type { Position } from './walk.ts';

/** What one sentence found: how often, at which steps, and the first place of each kind of standing. */
const zRule = z.strictObject({
  harm: z.string(),
  says: z.string(),
  count: z.number().int(),
  /** By step and how it stood, `undo-update own-word`: how often. */
  steps: z.record(z.string(), z.number().int()),
  first: z.string(),
});

/** How far a run has come, and what it has found. */
export const zProgress = z.strictObject({
  seed: z.number().int(),
  /** Which machines are this run’s: every so-manieth, from the one at. */
  share: z.strictObject({ at: z.number().int(), of: z.number().int().positive() }),
  machines: z.number().int(),
  states: z.number().int(),
  breaches: z.number().int(),
  statesBreached: z.number().int(),
  rules: z.record(z.string(), zRule),
});
export type Progress = z.infer<typeof zProgress>;

export type Share = Progress['share'];

export const begun = (seed: number, share: Share = { at: 0, of: 1 }): Progress => ({
  seed,
  share,
  machines: 0,
  states: 0,
  breaches: 0,
  statesBreached: 0,
  rules: {},
});

/** Adds one position; `machine` says in one line what stands there, so that it can be found again. */
export function add(progress: Progress, { log, found }: Position, machine: string): void {
  progress.states++;
  progress.breaches += found.length;
  if (found.length > 0) progress.statesBreached++;
  for (const { step, open, breach } of found) {
    const { rule, harm, says } = breach;
    const first = () => `${machine} ${log.join(' ') || 'nothing done'} → ${step} ${open}`;
    const known = progress.rules[rule] ?? { harm, says, count: 0, steps: {}, first: first() };
    progress.rules[rule] = known;
    known.count++;
    known.steps[`${step} ${open}`] = (known.steps[`${step} ${open}`] ?? 0) + 1;
  }
}

/** What several runs have found together, each its own share of the machines. */
export function together(runs: readonly Progress[]): Progress {
  const all = begun(runs[0]?.seed ?? 0);
  for (const { machines, states, breaches, statesBreached, rules } of runs) {
    all.machines += machines;
    all.states += states;
    all.breaches += breaches;
    all.statesBreached += statesBreached;
    for (const [rule, { count, steps, ...said }] of Object.entries(rules)) {
      const known = all.rules[rule] ?? { ...said, count: 0, steps: {} };
      all.rules[rule] = known;
      known.count += count;
      for (const [step, times] of Object.entries(steps)) known.steps[step] = (known.steps[step] ?? 0) + times;
    }
  }
  return all;
}

const MOST_STEPS = 12;

/** What was found, in lines, the most frequent sentence first; the last line says how much was looked at. */
export function tallyLines({ rules, states, machines, breaches, statesBreached, seed }: Progress): readonly string[] {
  const frequent = <T>(counted: Readonly<Record<string, T>>, count: (one: T) => number) =>
    Object.entries(counted).sort(([, one], [, other]) => count(other) - count(one));
  return [
    ...frequent(rules, ({ count }) => count).flatMap(([rule, { harm, says, count, steps, first }]) => {
      const at = frequent(steps, (times) => times);
      const more = at.length > MOST_STEPS ? `, and ${at.length - MOST_STEPS} more` : '';
      return [
        `${String(count).padStart(8)}  ${rule} [${harm}] ${says}`,
        `          ${at
          .slice(0, MOST_STEPS)
          .map(([step, times]) => `${step} ${times}`)
          .join(', ')}${more}`,
        `          ${first}`,
      ];
    }),
    `${states} states of ${machines} machines (seed ${seed}): ${breaches} breaches, ${statesBreached} states with one`,
  ];
}
