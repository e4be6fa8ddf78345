import words from '../../../assets/words/en/cli.json' with { type: 'json' };
import { fill } from '../../../core/text/wordsFor.ts';
import type { Judged } from '../../../core/tracing/cases/judge/judge.ts';
import type { Breach } from '../../../core/tracing/cases/judge/nevers.ts';
import type { Point } from '../../../core/tracing/cases/judge/points.ts';
import { type Share, type Tally, tooLong } from '../../../core/tracing/cases/judge/tally.ts';

const said = words.cases.judged;

const times = (ratio: number | null): string => (ratio === null ? '-' : ratio.toFixed(2));
const dash = (text: string | null): string => text ?? '-';

/** A played case as one object: how it ended, its minutes, its whole log, and everything counted beside. */
export function judgedJson(one: Judged) {
  const { played, end, nevers, firstSteps, firstThoughts, words: said, ...judged } = one;
  const verdict = played.positions.at(-1)?.answer.verdict ?? null;
  return {
    case: played.case.id,
    end: end.end,
    verdict,
    minutes: played.minutes,
    master: played.case.master.minutes,
    knowing: judged.knowing,
    tooLong: tooLong(one),
    waiting: played.waiting,
    log: played.log,
    cut: played.cut,
    dangerous: judged.dangerous,
    foolish: judged.foolish,
    breached: nevers.breached,
    leftOpen: nevers.leftOpen,
    firstSteps,
    firstThoughts,
    words: said,
    otherWay: end.otherWay,
  };
}

/** A played case for a person: one line, and one more for each thing that was wrong. */
export function judgedLines(judged: Judged): readonly string[] {
  const { played, end, nevers, firstSteps, firstThoughts, words: spoken } = judged;
  const verdict = played.positions.at(-1)?.answer.verdict ?? null;
  const breach = (text: string) => (one: Breach) => fill(text, { ...one, harm: dash(one.harm) });
  const point = (text: string) => (one: Point) => fill(text, { after: one.after, got: one.got });
  const missed = (points: readonly Point[]) => points.filter(({ ok }) => ok === false);
  return [
    fill(said.line, {
      end: said.ends[end.end],
      case: played.case.id,
      minutes: Math.round(played.minutes),
      master: played.case.master.minutes,
      knowing: judged.knowing === null ? '-' : Math.round(judged.knowing),
      kind: verdict?.kind,
      part: dash(verdict?.part ?? null),
      fault: dash(verdict?.fault ?? null),
      mend: dash(verdict?.mend ?? null),
      because: dash(verdict?.because ?? null),
      cut: played.cut ? said.cut : '',
    }),
    ...(tooLong(judged) ? [said.tooLong] : []),
    ...nevers.breached.map(breach(said.breach)),
    ...nevers.leftOpen.map(breach(said.open)),
    ...missed(firstSteps).map(point(said.first)),
    ...missed(firstThoughts).map(point(said.thought)),
    ...spoken.wrong.map((one) => fill(said.word, one)),
    ...spoken.byAPerson.map((says) => fill(said.person, { says })),
  ];
}

/** What the run comes to, one figure a line. */
export function tallyLines(all: Tally): readonly string[] {
  const share = (text: string, { ok, of }: Share) => fill(text, { ok, of });
  return [
    fill(said.all, { ...all.ends, dangerous: all.dangerous, foolish: all.foolish, open: all.leftOpen }),
    share(said.firstSteps, all.firstSteps),
    share(said.firstThoughts, all.firstThoughts),
    share(said.words, all.words),
    fill(said.otherWays, { count: all.otherWays }),
    fill(said.overKnowing, { ratio: times(all.overKnowing) }),
    fill(said.tooLongs, { count: all.tooLong, of: all.cases }),
  ];
}

export const lastLine = (all: Tally): string =>
  fill(said.last, {
    cases: all.cases,
    right: all.ends.right,
    wrong: all.ends.wrong,
    dangerous: all.dangerous,
    overRight: times(all.overRight),
    overAll: times(all.overAll),
  });
