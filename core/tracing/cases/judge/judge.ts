import type { FaultModel } from '../../live/types.ts';
import { minutesKnowing } from '../play/knowing.ts';
import type { Played } from '../play/play.ts';
import { type EndJudged, judgeEnd } from './end.ts';
import { judgeNevers, type NeverJudged } from './nevers.ts';
import { judgeFirstSteps, judgeFirstThoughts, type Point } from './points.ts';
import { judgeWords, type WordsJudged } from './words.ts';

/** All that the bench cases' judging says of one played case. */
export type Judged = {
  readonly played: Played;
  readonly end: EndJudged;
  readonly nevers: NeverJudged;
  readonly firstSteps: readonly Point[];
  readonly firstThoughts: readonly Point[];
  readonly words: WordsJudged;
  readonly dangerous: boolean;
  readonly foolish: boolean;
  /** The least minutes of one who knows what is wrong, by the model's own; null where no step ends it. */
  readonly knowing: number | null;
};

/** Judges a played case: its end, what was breached, and what is counted beside. */
export function judge(model: FaultModel, played: Played): Judged {
  const nevers = judgeNevers(model, played);
  return {
    played,
    end: judgeEnd(model, played),
    nevers,
    firstSteps: judgeFirstSteps(model, played),
    firstThoughts: judgeFirstThoughts(model, played),
    words: judgeWords(model, played),
    dangerous: nevers.breached.some(({ harm }) => harm !== null),
    foolish: nevers.breached.some(({ harm }) => harm === null),
    knowing: minutesKnowing(model, played.case),
  };
}
