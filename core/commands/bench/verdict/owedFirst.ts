import type { Owed } from '../../../tracing/live/types.ts';
import { type Decision, refuse } from '../../kernel/decision.ts';

/** What is owed first: what of it can be done now; or, where nothing of it can, what it is and what keeps it back. */
export function owedFirst(owed: readonly Owed[]): Decision {
  const can = owed.flatMap(({ steps }) => steps.filter(({ why }) => why === null).map(({ step }) => step));
  return can.length > 0 ? refuse('owed-before-verdict', { steps: can }) : refuse('owed-cannot-be-done', { owed });
}
