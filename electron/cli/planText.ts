import words from '../../assets/words/en/plan.json' with { type: 'json' };
import { say } from '../../core/text/say.ts';
import type { Policy } from '../../core/tracing/plan/ahead/policyTree.ts';
import type { Plan } from '../../core/tracing/plan/planProblem.ts';

/** A plan for people: one line per step, indented only where outcomes lead different ways. */
export function planText(file: string, plan: Plan): string[] {
  const minutes = plan.expectedMinutes.toFixed(2);
  const facts = { file, minutes, method: plan.method };
  const lines = [say(plan.first === null ? words.plan.stop : words.plan.head, facts)];
  if (plan.cutMass > 0) lines.push(say(words.plan.cut, { mass: plan.cutMass.toPrecision(2) }));
  if (plan.policy !== 'hand over') lines.push(...policyText(plan.policy, '  '));
  return lines;
}

function policyText(policy: Policy, indent: string): string[] {
  const lines: string[] = [];
  let at: Policy = policy;
  while (at !== 'hand over') {
    const ways: (readonly [string, Policy | 'done'])[] = Object.entries(at.then);
    const ends = ways.map(([outcome, then]) => [outcome, endOf(then)] as const).filter(([, end]) => end !== undefined);
    const told = ends.map(([outcome, end]) => say(words.plan.outcome, { outcome, what: end ?? '' }));
    lines.push(`${indent}${at.step}${told.length > 0 ? ` (${told.join('; ')})` : ''}`);
    const goingOn = ways.filter((way): way is [string, Exclude<Policy, string>] => endOf(way[1]) === undefined);
    const [only] = goingOn;
    if (goingOn.length === 1 && only) {
      at = only[1];
      continue;
    }
    for (const [outcome, then] of goingOn) {
      lines.push(`${indent}${say(words.plan.after, { outcome })}`, ...policyText(then, `${indent}  `));
    }
    return lines;
  }
  return lines;
}

function endOf(then: Policy | 'done'): string | undefined {
  if (then === 'done') return words.plan.done;
  return then === 'hand over' ? words.plan['hand-over'] : undefined;
}
