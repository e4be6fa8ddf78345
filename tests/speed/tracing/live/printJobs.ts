import words from '../../../../assets/words/en/tracing.json' with { type: 'json' };
import { prng } from '../../../../core/figures/prng.ts';
import { standardModel } from '../../../../core/tracing/live/loading/standardModel.ts';
import { offerStep } from '../../../../core/tracing/live/offer/offerStep.ts';
import { verdictAfter } from '../../../../core/tracing/live/verdict/verdictAfter.ts';
import { afterDoing, WALL } from '../../../builders/tracingCase.ts';
import { SimulatedMachine } from './simulatedMachine.ts';
import { STARTS, startOf } from './starts.ts';

const MOST_STEPS = 30;
const steps: Readonly<Record<string, { readonly name: string }>> = words.steps;
const model = standardModel();

/** Prints simulated jobs from start to end, as a technician would read them: `node printJobs.ts [how many] [seed] [method]`. */
const [count = 24, seed = 1] = process.argv.slice(2, 4).map(Number);
const method = process.argv[4] === 'ratio' ? 'ratio' : 'rollout';
for (let n = 0; n < count; n++) {
  let tracing = startOf(model, n);
  const machine = new SimulatedMachine(model, tracing, prng(seed * 1000 + n));
  console.info(
    `\n${n + 1}. seen: ${tracing.seen.join(', ')}; truth: ${machine.id}${machine.comes ? ', comes and goes' : ''}`,
  );
  for (let done = 0; done < MOST_STEPS; done++) {
    const verdict = verdictAfter(model, tracing);
    if (!['tracing', 'named'].includes(verdict.verdict)) break;
    const offer = offerStep(model, tracing, { method });
    if (!offer.next) {
      console.info(`   stops: ${JSON.stringify(offer.stop).slice(0, 120)}`);
      break;
    }
    const { step: id, handsOn, facts } = offer.next;
    const outcome = machine.does(tracing, id);
    const why = facts.map((fact) => ('fault' in fact ? `${fact.fact} ${fact.fault}` : fact.fact)).join(', ');
    console.info(`   ${steps[id]?.name ?? id} [${id}], ${handsOn} min (${why}): ${outcome.id}`);
    const step = model.steps[model.stepIndex.get(id) ?? -1];
    if (!step) throw new Error(id);
    const kinds = [step.handling.borrows, ...step.handling.alsoBorrows];
    const loaners = WALL.filter((one) => kinds.includes(one.kind) && model.badLoaner[one.kind]).slice(0, 1);
    tracing = afterDoing(model, tracing, id, outcome.id, {
      loaners: loaners.map((one) => ({ id: one.id, kind: one.kind, standing: one.standing })),
      stays: outcome.meaning.means === 'works' && step.takesOut.length > 0,
    });
  }
  const { verdict, ...rest } = verdictAfter(model, tracing);
  console.info(
    `   => ${verdict}${'fault' in rest && rest.fault !== null ? ` ${rest.fault}` : ''}, loaners hurt: ${machine.loanersHurt}`,
  );
}
console.info(`\n${count} jobs over ${STARTS.length} groups, seed ${seed}.`);
