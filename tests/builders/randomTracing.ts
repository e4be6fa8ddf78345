import { prng } from '../../core/figures/prng.ts';
import type { FaultModel, LoanerProof, Step, TracingCase } from '../../core/tracing/live/types.ts';
import { afterDoing, aTracingCase, WALL } from './tracingCase.ts';

const pick = <T>(chance: ReturnType<typeof prng>, list: readonly T[]): T =>
  list[Math.floor(chance.next() * list.length)] as T;

/** Any outcome; of a look at several places any two findings now and then. */
function cameOf(chance: ReturnType<typeof prng>, { places, outcomes }: Step): string {
  const findings = places.flatMap((place) => place.findings);
  if (findings.length === 0 || chance.next() < 0.4) return pick(chance, outcomes).id;
  const found = pick(chance, findings);
  return [
    found,
    pick(
      chance,
      findings.filter((one) => one !== found),
    ),
  ].join('+');
}

/**
 * A case with a random log of so many steps, loaners in it, the same for the same seed. `doubtful`: each loaner of any
 * standing, the exposed and the unproved among them.
 */
export function randomTracing(
  model: FaultModel,
  seed: number,
  steps: number,
  { doubtful = false }: { readonly doubtful?: boolean } = {},
): TracingCase {
  const chance = prng(seed);
  const told = model.symptoms.map((one) => one.id);
  const standings: readonly LoanerProof[] = ['trial-grade', 'known-good', 'exposed', 'unproved'];
  let tracing = aTracingCase({
    told: {
      symptoms: [pick(chance, told), ...(chance.next() < 0.3 ? [pick(chance, told)] : [])],
      changed: chance.next() < 0.5 ? [pick(chance, model.evidence).id] : [],
      often: chance.next() < 0.7 ? [pick(chance, model.often).id] : [],
      onlyWhen: chance.next() < 0.3 ? ['load'] : [],
      rate: chance.next() < 0.2 ? { perStart: 0.2, perHour: 0.1 } : null,
    },
    seen: chance.next() < 0.5 ? [pick(chance, told)] : [],
  });
  for (let k = 0; k < steps; k++) {
    const before = tracing.log.at(-1)?.step;
    const again = before === undefined ? undefined : model.steps[model.stepIndex.get(before) ?? -1];
    const step: Step = chance.next() < 0.2 && again ? again : pick(chance, model.steps);
    const kinds = [step.handling.borrows, ...step.handling.alsoBorrows];
    const loaners = WALL.filter((one) => kinds.includes(one.kind) && model.badLoaner[one.kind])
      .slice(0, 2)
      .map(({ id, kind, standing }) => ({ id, kind, standing: doubtful ? pick(chance, standings) : standing }));
    tracing = afterDoing(model, tracing, step.id, cameOf(chance, step), {
      loaners,
      stays: chance.next() < 0.3,
    });
  }
  return tracing;
}
