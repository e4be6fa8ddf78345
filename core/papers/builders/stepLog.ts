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
  const rows = log.flatMap((step, index) => {
    const day = format.day(step.at);
    const before = log[index - 1];
    const newDay = before === undefined || format.day(before.at) !== day;
    const outcome = step.by ? `${step.outcome} (${step.by})` : step.outcome;
    return [
      ...(newDay ? [{ cells: [day], strong: true as const, over: true as const }] : []),
      { cells: [format.time(step.at), step.what, outcome, short(step.hands), short(step.wait)] },
    ];
  });
  return [
    {
      block: 'table',
      summary: words.summaryLog,
      small: true,
      columns: [
        { head: words.logWhen, share: 9 },
        { head: words.logStep, share: 24 },
        { head: words.logOutcome, share: 62 },
        { head: words.logHands, share: 10, align: 'right' },
        { head: words.logWait, share: 11, align: 'right' },
      ],
      rows: [...rows, { cells: ['', words.logSum, '', short(sum('hands')), short(sum('wait'))], strong: true }],
    },
  ];
}
