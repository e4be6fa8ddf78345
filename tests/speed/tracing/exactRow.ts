import { chains, wildcatter } from '../../published/tracing/cases.ts';
import { exhaustiveMinutes } from '../../published/tracing/exhaustive.ts';
import { randomProblem } from '../../published/tracing/randomProblem.ts';
import { solve } from '../../published/tracing/solve.ts';
import { atMost, type Row, shown } from './row.ts';

const MIX = { faults: [2, 5], steps: [3, 5], states: [0, 4], observations: 0.34, extras: 0.4 } as const;

export const exactRow: Row = {
  name: 'exact equals trying everything',
  measure: ({ short }) => {
    const small = short ? 1000 : 5000;
    const six = short ? 30 : 150;
    let worst = 0;
    for (let seed = 1; seed <= small + six; seed++) {
      const problem = randomProblem(seed, seed <= small ? MIX : { ...MIX, steps: [6, 6], states: [1, 3] });
      worst = Math.max(worst, Math.abs(solve(problem, 'exact').expectedMinutes - exhaustiveMinutes(problem)));
    }
    const pinedo = Math.abs(solve(chains, 'exact').expectedMinutes * 87 - 1967);
    const raiffa = Math.abs(200 - solve(wildcatter(10), 'exact').expectedMinutes - 22.5);
    return {
      figures: [
        shown('random problems of 3 to 5 / of 6 steps', `${small} / ${six}`),
        atMost('largest difference, minutes', worst, 1e-9, '', -1),
        atMost('Pinedo, two chains: away from 1967', pinedo, 1e-9, '', -1),
        atMost('Raiffa, oil wildcatter: away from 22.5', raiffa, 1e-9, '', -1),
      ],
    };
  },
};
