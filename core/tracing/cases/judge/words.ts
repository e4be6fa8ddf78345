import type { FaultModel } from '../../live/types.ts';
import { KINDS } from '../kinds/kindNames.ts';
import type { Played, Position } from '../play/play.ts';
import { isStep } from './logHas.ts';

/** Something that was to be said and was not, or was said and must not be. */
export type WrongWord = { readonly at: string; readonly rule: string };
export type WordsJudged = {
  readonly wrong: readonly WrongWord[];
  readonly checked: number;
  readonly byAPerson: readonly string[];
};

/** At a step with one of these, nothing is said not to be at risk: data, settings, burns, pins, firmware. */
const AT_RISK = ['D', 'W', 'F', 'K', 'P'];

const proposals = ({ positions }: Played): readonly Position[] =>
  positions.filter(({ answer }) => answer.step !== null);

/** What had to be said, and what must not be: the case's own rules, and the two that hold everywhere. */
export function judgeWords(model: FaultModel, played: Played): WordsJudged {
  const wrong: WrongWord[] = [];
  let checked = 0;
  const check = (position: Position, ok: boolean, rule: string) => {
    checked += 1;
    if (!ok) wrong.push({ at: position.answer.step ?? position.answer.verdict?.kind ?? '', rule });
  };
  for (const position of proposals(played)) {
    const { reasons, cautions } = position.answer;
    check(position, !reasons.includes('tells-nothing'), 'tells-nothing');
    check(
      position,
      !(reasons.includes('nothing-at-risk') && cautions.some((one) => AT_RISK.includes(one))),
      'nothing-at-risk',
    );
  }
  for (const said of played.case.words) {
    if (typeof said === 'string') continue;
    if ('caution' in said) {
      for (const position of proposals(played).filter((one) => isAt(model, one, said.at)))
        check(position, position.answer.cautions.includes(said.caution), `caution ${said.caution}`);
    } else if ('not' in said) {
      for (const position of played.positions.filter((one) => said.at === undefined || isAt(model, one, said.at)))
        check(position, !reasonsOf(position).includes(said.not), `not ${said.not}`);
    } else {
      const last = played.positions.at(-1);
      if (last)
        check(
          last,
          played.positions.some((one) => asksFor(one, said.ask)),
          `ask ${said.ask}`,
        );
    }
  }
  return { wrong, checked, byAPerson: played.case.words.filter((one) => typeof one === 'string') };
}

const isAt = (model: FaultModel, { answer, kindsOf }: Position, at: string): boolean =>
  answer.step !== null &&
  (KINDS.some((one) => one === at) ? kindsOf(answer.step).has(at) : isStep(model, at, answer.step));

const reasonsOf = ({ answer }: Position): readonly string[] => [
  ...answer.reasons,
  ...(answer.step === null && answer.verdict?.because ? [answer.verdict.because] : []),
];

const asksFor = ({ answer }: Position, word: string): boolean =>
  answer.step === `ask-${word}` || answer.asks.some(({ id }) => id === word);
