import { table } from '../blocks.ts';
import type { Block } from '../content.ts';
import type { Format } from '../format.ts';
import type { Setting } from '../setting.ts';
import type { StepFacts } from './returnReportFacts.ts';

/** Every step in order, with what came of it and its minutes, and their sum. */
export function stepLog(log: readonly StepFacts[], setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds['return-report'];
  const short = (n: number) => (n === 0 ? '' : format.say(words.minutesShort, { n: format.number(Math.round(n)) }));
  const sum = (of: 'hands' | 'wait') => log.reduce((total, step) => total + step[of], 0);
  if (log.length === 0) return [];
  return table(
    words.summaryLog,
    [
      { head: words.logWhen, share: 18 },
      { head: words.logStep, share: 28 },
      { head: words.logOutcome, share: 50 },
      { head: words.logHands, share: 11, align: 'right' },
      { head: words.logWait, share: 11, align: 'right' },
    ],
    [
      ...log.map((step) => ({
        cells: [
          format.shortDayTime(step.at),
          step.what,
          step.by ? `${step.outcome} (${step.by})` : step.outcome,
          short(step.hands),
          short(step.wait),
        ],
      })),
      { cells: [words.logSum, '', '', short(sum('hands')), short(sum('wait'))], strong: true as const },
    ],
  );
}
