import type { PhoneSentence } from '../../core/job/promise/phoneSentence.ts';
import { fill } from '../../core/text/wordsFor.ts';
import type { Words } from '../kit/text/words.tsx';

const MOMENTS = new Set(['promised', 'until', 'due', 'at', 'likely', 'told', 'was']);

/** The one sentence for the phone: its words filled with facts, moments said as days and hours. */
export function sentence(
  { says, facts }: PhoneSentence,
  catalogue: Readonly<Record<string, string>>,
  words: Pick<Words, 'dayClock'>,
): string {
  const said = Object.fromEntries(
    Object.entries(facts).map(([name, value]) => [
      name,
      MOMENTS.has(name) && typeof value === 'number' ? words.dayClock(value) : value,
    ]),
  );
  return fill(catalogue[says] ?? says, said);
}
