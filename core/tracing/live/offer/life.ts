import { readGroups } from '../readGroups.ts';
import { type FaultModel, type Group, LIVES, type Life, type TracingCase } from '../types.ts';

/** How far a machine of a symptom group gets by itself. */
const LIFE_OF: Readonly<Record<Group, Life>> = {
  NR: 'none',
  CY: 'reacts',
  NP: 'reacts',
  PX: 'posts',
  SB: 'picture',
  BD: 'picture',
  FR: 'system',
  AR: 'picture',
  HN: 'system',
  DR: 'system',
  PO: 'system',
  SW: 'system',
  NF: 'system',
};

/** How far the machine gets now: what the log showed last, else the least that its symptoms allow. */
export function lifeNow(model: FaultModel, tracing: TracingCase): Life {
  for (const entry of tracing.log.toReversed()) {
    if (entry.struck) continue;
    const step = model.steps[model.stepIndex.get(entry.step) ?? -1];
    const outcome = step?.outcomes.find((one) => one.id === entry.outcome);
    if (outcome?.life) return outcome.life;
    if (outcome?.meaning.means === 'works' && step?.exposure) return 'system';
  }
  const groups = readGroups(model, tracing.seen.length > 0 ? tracing.seen : tracing.told.symptoms);
  return groups.map((group) => LIFE_OF[group]).sort((a, b) => LIVES.indexOf(a) - LIVES.indexOf(b))[0] ?? 'system';
}

export const reaches = (has: Life, needs: Life): boolean => LIVES.indexOf(has) >= LIVES.indexOf(needs);
