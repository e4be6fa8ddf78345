import { prng } from '../../../../core/labour/prng.ts';
import { standardModel } from '../../../../core/tracing/live/model/standardModel.ts';
import type { FaultModel, TracingCase } from '../../../../core/tracing/live/types.ts';
import { afterDoing, aTracingCase } from '../../../builders/tracingCase.ts';
import { type Figure, mean, type Row, shown } from '../row.ts';
import { perturbedTruth } from './perturbedTruth.ts';
import { fixedOrder, habit, offered, type Policy } from './policies.ts';
import { type Run, runMachine } from './runMachine.ts';
import { SimulatedMachine } from './simulatedMachine.ts';

/** What owners tell and the bench sees, over all symptom groups. */
export const STARTS: readonly {
  readonly told: string;
  readonly seen: string;
  readonly often: string;
  readonly group: string;
}[] = [
  { told: 'no-reaction', seen: 'no-reaction', often: 'every-time', group: 'nr' },
  { told: 'restarts-itself', seen: 'restarts-itself', often: 'every-time', group: 'cy' },
  { told: 'dark-runs', seen: 'no-lock-light', often: 'every-time', group: 'np' },
  { told: 'no-signal', seen: 'dark-but-alive', often: 'every-time', group: 'px' },
  { told: 'stuck-loading', seen: 'stuck-loading', often: 'every-time', group: 'sb' },
  { told: 'no-boot-device', seen: 'no-boot-device', often: 'every-time', group: 'bd' },
  { told: 'shuts-off', seen: 'shuts-off', often: 'daily-several', group: 'fr' },
  { told: 'stripes', seen: 'stripes', often: 'always-on', group: 'ar' },
  { told: 'loud-fan', seen: 'loud-fan', often: 'always-on', group: 'hn' },
  { told: 'drive-slow', seen: 'drive-slow', often: 'always-on', group: 'dr' },
  { told: 'net-dead', seen: 'net-dead', often: 'always-on', group: 'po' },
  { told: 'slow', seen: 'slow', often: 'always-on', group: 'sw' },
];

/** Looked inside and the first start watched: where every policy begins. */
export function startOf(model: FaultModel, n: number): TracingCase {
  const { told, seen, often, group } = STARTS[n % STARTS.length] as (typeof STARTS)[number];
  const told0 = { symptoms: [told], changed: [], often: [often], onlyWhen: [], rate: null };
  const looked = afterDoing(model, aTracingCase({ told: told0 }), 'look-inside', 'clean');
  return afterDoing(model, { ...looked, seen: [seen] }, 'watch-start', group);
}

type Named = { readonly name: string; readonly policy: Policy };

export const liveRow: Row = {
  name: 'full model: hands-on minutes against other ways of working',
  measure: ({ short }) => {
    const model = standardModel();
    const truths = short ? 2 : 20;
    const machines = short ? 24 : 500;
    const confirm = offered(model, 'ratio');
    const policies: readonly Named[] = [
      { name: 'rollout', policy: offered(model, 'rollout') },
      { name: 'ratio', policy: offered(model, 'ratio') },
      { name: 'easiest', policy: offered(model, 'easiest') },
      { name: 'fixed', policy: fixedOrder(model) },
      { name: 'habit', policy: habit(model) },
      { name: 'careless', policy: offered(careless(model), 'ratio') },
    ];
    const runs = new Map<string, { readonly truth: number; readonly run: Run; readonly fault: string }[]>();
    for (let truth = 1; truth <= truths; truth++) {
      const world = perturbedTruth(model, prng(truth));
      for (let n = 0; n < machines; n++) {
        for (const { name, policy } of policies) {
          const start = startOf(model, n);
          const machine = new SimulatedMachine(world, start, prng(truth * 10_000 + n));
          const list = runs.get(name) ?? [];
          list.push({ truth, run: runMachine(model, start, machine, policy, confirm), fault: machine.id });
          runs.set(name, list);
        }
      }
    }
    return { figures: figuresOf(model, runs, truths, machines) };
  },
};

/** The same model without harm and gates: what planning by minutes alone would do to the loaners. */
const careless = (model: FaultModel): FaultModel => ({
  ...model,
  gates: [],
  steps: model.steps.map((step) => ({ ...step, harm: [], slip: null })),
});

type Runs = ReadonlyMap<string, readonly { readonly truth: number; readonly run: Run; readonly fault: string }[]>;

function figuresOf(model: FaultModel, runs: Runs, truths: number, machines: number): Figure[] {
  const minutes = (name: string, truth: number) =>
    mean((runs.get(name) ?? []).filter((one) => one.truth === truth).map((one) => one.run.minutes));
  const perTruth = (other: string) =>
    Array.from({ length: truths }, (_, t) => 1 - minutes('rollout', t + 1) / minutes(other, t + 1));
  const gain = (other: string, bar: number | null): Figure => {
    const gains = perTruth(other);
    const middle = mean(gains);
    const half = (1.96 * Math.sqrt(mean(gains.map((one) => (one - middle) ** 2)))) / Math.sqrt(Math.max(1, truths - 1));
    const figure = `${(100 * middle).toFixed(1)} % (95 %: ${(100 * (middle - half)).toFixed(1)} to ${(100 * (middle + half)).toFixed(1)})`;
    return {
      what: `fewer minutes than ${other}`,
      figure,
      bar: bar === null ? '' : `≥ ${100 * bar} %`,
      met: bar === null ? null : middle >= bar,
    };
  };
  const ours = runs.get('rollout') ?? [];
  const confirmed = ours.filter((one) => one.run.verdict === 'confirmed');
  const wrong = confirmed.filter((one) => partOf(model, one.fault) !== one.run.blamed).length;
  const named = ours.filter((one) => one.run.verdict === 'named');
  const firstNamed = ours.filter((one) => one.run.named !== null);
  const wronglyNamed = firstNamed.filter((one) => partOf(model, one.fault) !== one.run.named);
  const hurtBy = (name: string) => {
    const list = runs.get(name) ?? [];
    return ((1000 * list.reduce((sum, one) => sum + one.run.hurt, 0)) / list.length).toFixed(1);
  };
  return [
    shown('truths × machines', `${truths} × ${machines}`),
    ...[...runs].map(([name, list]) =>
      shown(
        `mean minutes by ${name}`,
        `${mean(list.map((one) => one.run.minutes)).toFixed(1)}, settled ${((100 * list.filter((one) => one.run.verdict !== 'tracing').length) / list.length).toFixed(0)} %`,
      ),
    ),
    ...settledByAll(runs),
    gain('easiest', 0.25),
    gain('fixed', 0.1),
    gain('habit', null),
    gain('ratio', null),
    {
      what: 'confirmed parts without the true fault',
      figure: `${wrong} of ${confirmed.length}`,
      bar: '≤ 0.5 %',
      met: wrong <= 0.005 * confirmed.length,
    },
    shown(
      'left named',
      `${named.length}, wrongly ${named.filter((one) => partOf(model, one.fault) !== one.run.blamed).length}`,
    ),
    shown(
      'named first, and wrongly: what it would be without confirming',
      `${wronglyNamed.length} of ${firstNamed.length}`,
    ),
    shown('loaners hurt per 1,000 machines, by ratio', hurtBy('ratio')),
    shown('the same without harm and gates in the plan', hurtBy('careless')),
  ];
}

/** The same machines only, those that every way of working settled: no charge for handing over, no cap on minutes plays in. */
function settledByAll(runs: Runs): Figure[] {
  const lists = [...runs].filter(([name]) => name !== 'careless');
  const all = (lists[0]?.[1] ?? []).map((_, at) => lists.every(([, list]) => list[at]?.run.verdict !== 'tracing'));
  return [
    shown(
      'mean minutes on machines that all settled',
      `${lists.map(([name, list]) => `${name} ${mean(list.filter((_, at) => all[at]).map((one) => one.run.minutes)).toFixed(1)}`).join(', ')} (${all.filter(Boolean).length} machines)`,
    ),
  ];
}

const partOf = (model: FaultModel, fault: string): string | undefined =>
  model.faults[model.faultIndex.get(fault) ?? -1]?.part;
