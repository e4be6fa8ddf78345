import type { Owed } from '../../core/tracing/live/types.ts';
import type { Words } from '../kit/text/words.tsx';
import { notOfferedWords } from './reasonWords.ts';
import { gateText, stepName } from './terms.ts';

/** What comes before a verdict, and what keeps each step of it from being done now. */
export function owedWords({ gate, steps }: Owed, words: Pick<Words, 'list'>): string {
  const kept = steps.flatMap(({ step, why }) =>
    why === null ? [] : [`${stepName(step)}: ${notOfferedWords({ why }, words)}`],
  );
  return kept.length === 0 ? gateText(gate) : `${gateText(gate)} (${kept.join('; ')})`;
}
