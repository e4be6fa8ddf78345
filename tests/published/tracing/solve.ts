import { type Plan, planProblem } from '../../../core/tracing/plan/planProblem.ts';
import { parseProblem } from '../../../core/tracing/plan/problem/parseProblem.ts';
import type { Method, TracingProblem } from '../../../core/tracing/plan/problem/problem.ts';
import type { Exchange, WrittenPolicy } from './exchange.ts';

/** Reads a problem as if it came from a file; a refusal fails the test that asked. */
export function read(problem: Exchange): TracingProblem {
  const parsed = parseProblem(JSON.stringify(problem), 'test.json');
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.refusal));
  return parsed.problem;
}

export function solve(problem: Exchange, method: Method): Plan {
  const answered = planProblem(read(problem), { method });
  if (!answered.ok) throw new Error(JSON.stringify(answered.refusal));
  return answered.plan;
}

/** The steps in order along the outcomes that do not cure, where each step has just one of them. */
export function orderOf(plan: Plan): string[] {
  const order: string[] = [];
  let at = plan.policy as WrittenPolicy;
  while (typeof at !== 'string') {
    order.push(at.step);
    const next = Object.values(at.then).find((then) => then !== 'done');
    at = next ?? 'done';
  }
  return order;
}

/** So dear that nobody hands over. */
export const NEVER = 1e6;
