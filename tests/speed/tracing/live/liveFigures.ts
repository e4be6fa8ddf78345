import { wilson } from '../../../../core/figures/interval.ts';
import { type Figure, mean, shown } from '../row.ts';
import { type OverTruths, overTruths } from './overTruths.ts';
import type { Run } from './runMachine.ts';
import { type Traced, WAYS, type Way } from './simulate.ts';

const OF_WAY: { readonly [way in Way]: string } = {
  easiest: 'easiest first',
  fixed: 'best fixed order',
  habit: 'habit order',
  ratio: 'ratio',
  rollout: 'rollout',
  careless: 'ratio without harm and gates',
};

/** The ways that are compared by minutes; careless is there for what it hurts. */
export const COMPARED = WAYS.filter((way) => way !== 'careless');

export const nameOf = (way: Way): string => OF_WAY[way];

/** The mean of a figure over the machines of each truth, and over truths. */
export function overMachines(traced: readonly Traced[], of: (one: Traced) => number): OverTruths {
  return overTruths(perTruth(traced, of));
}

function perTruth(traced: readonly Traced[], of: (one: Traced) => number): readonly number[] {
  const byTruth = Map.groupBy(traced, ({ truth }) => truth);
  return [...byTruth.values()].map((machines) => mean(machines.map(of)));
}

const say = ({ middle, half }: OverTruths, digits = 1, unit = ''): string =>
  `${middle.toFixed(digits)}${unit} (95 %: ${(middle - half).toFixed(digits)} to ${(middle + half).toFixed(digits)})`;

/** Hands-on minutes: means, gains against the bars, and how near to one who knows the fault. */
export function minutesFigures(traced: readonly Traced[]): readonly Figure[] {
  const minutes = (way: Way) => (one: Traced) => one.runs[way].minutes;
  const settled = (way: Way) => mean(traced.map((one) => (one.runs[way].verdict === 'tracing' ? 0 : 100)));
  const bySame = traced.filter((one) => COMPARED.every((way) => one.runs[way].verdict !== 'tracing'));
  const gain = (other: Way, bar: number | null): Figure => {
    const ours = perTruth(traced, minutes('rollout'));
    const theirs = perTruth(traced, minutes(other));
    const gains = overTruths(ours.map((own, truth) => 100 * (1 - own / (theirs[truth] ?? Number.NaN))));
    return {
      what: `rollout: fewer minutes than ${OF_WAY[other]}`,
      figure: say(gains, 1, ' %'),
      bar: bar === null ? '' : `≥ ${bar} %`,
      met: bar === null ? null : gains.middle >= bar,
    };
  };
  return [
    ...COMPARED.map((way) =>
      shown(
        `mean minutes, ${OF_WAY[way]}`,
        `${say(overMachines(traced, minutes(way)))}, ${settled(way).toFixed(0)} % settled`,
      ),
    ),
    shown('mean minutes, perfect-information bound', say(overMachines(traced, (one) => one.knowing))),
    ...COMPARED.map((way) =>
      shown(
        `on the ${bySame.length} machines that every way settled, ${OF_WAY[way]}`,
        mean(bySame.map(minutes(way))).toFixed(1),
      ),
    ),
    gain('easiest', 25),
    gain('fixed', 10),
    gain('habit', null),
    gain('ratio', null),
  ];
}

/** What was printed of parts: wrongly confirmed, and how often the part first named was wrong. */
export function rightFigures(traced: readonly Traced[]): readonly Figure[] {
  const confirmed = traced.filter((one) => one.runs.rollout.verdict === 'confirmed');
  const wrong = confirmed.filter((one) => one.runs.rollout.blamed !== one.part).length;
  const first = traced.filter((one) => one.runs.rollout.named !== null);
  const firstWrong = first.filter((one) => one.runs.rollout.named !== one.part).length;
  const left = traced.filter((one) => one.runs.rollout.verdict === 'named');
  const leftWrong = left.filter((one) => one.runs.rollout.blamed !== one.part).length;
  const bounded = (what: string, of: number): Figure => ({
    what,
    figure: share(wrong, of),
    bar: '≤ 0.5 %',
    met: wrong <= 0.005 * of,
  });
  return [
    bounded('confirmed, and carries no true fault: of all machines', traced.length),
    bounded('confirmed, and carries no true fault: of those confirmed', confirmed.length),
    ...(['rollout', 'ratio', 'habit'] as const).flatMap((way) => {
      const said = traced.filter((one) => one.runs[way].saidMended !== 'not');
      const wrongly = said.filter((one) => one.runs[way].saidMended === 'wrongly').length;
      return [
        shown(`said mended, and is not: of all machines, ${OF_WAY[way]}`, share(wrongly, traced.length)),
        shown(`said mended, and is not: of those said mended, ${OF_WAY[way]}`, share(wrongly, said.length)),
      ];
    }),
    shown(
      'without confirmation (the part first named taken for true): of all machines',
      share(firstWrong, traced.length),
    ),
    shown('without confirmation: of those named', share(firstWrong, first.length)),
    shown('left named and not confirmed, of these wrong', share(leftWrong, left.length)),
  ];
}

/** Wilson's interval, over machines. */
function share(count: number, of: number): string {
  if (of === 0) return '0 of 0';
  const { low, high } = wilson(count, of);
  return `${count} of ${of}: ${((100 * count) / of).toFixed(2)} % (95 %: ${(100 * low).toFixed(2)} to ${(100 * high).toFixed(2)})`;
}

/** Parts hurt per 1,000 machines, with and without the harm term and the gates. */
export function hurtFigures(traced: readonly Traced[]): readonly Figure[] {
  const per1000 = (way: Way, of: (run: Run) => number) => say(overMachines(traced, (one) => 1000 * of(one.runs[way])));
  return (['rollout', 'ratio', 'careless'] as const).flatMap((way) => [
    shown(
      `loaners hurt per 1,000 machines, ${OF_WAY[way]}`,
      per1000(way, (run) => run.loanersHurt),
    ),
    shown(
      `owners' sound parts hurt per 1,000 machines, ${OF_WAY[way]}`,
      per1000(way, (run) => run.ownersHurt),
    ),
  ]);
}
