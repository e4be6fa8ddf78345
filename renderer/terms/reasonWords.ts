import history from '../../assets/words/en/history.json';
import { fill } from '../../core/text/wordsFor.ts';
import type { NotOffered, ReasonFact } from '../../core/tracing/live/types.ts';
import type { Words } from '../kit/text/words.tsx';
import {
  faultName,
  kindName,
  needText,
  noLoanerText,
  notOfferedText,
  outcomeName,
  reasonText,
  stateName,
  stepName,
} from './terms.ts';

const MOST_NAMED = 2;
const HISTORY: Readonly<Record<string, string>> = Object.assign({}, ...Object.values(history));

/** One fact behind a choice, as a sentence. */
export function reasonWords(fact: ReasonFact, words: Words): string {
  return fill(reasonText(fact.fact), factsOf(fact, words));
}

function factsOf(fact: ReasonFact, { t, minutes, odds, list }: Words): Readonly<Record<string, string>> {
  switch (fact.fact) {
    case 'told-changed':
      return { history: HISTORY[fact.history] ?? fact.history, fault: faultName(fact.fault) };
    case 'likely':
      return { fault: faultName(fact.fault), odds: odds(fact.p) };
    case 'splits':
      return {
        outcome: outcomeName(fact.outcome),
        odds: odds(fact.p),
        faults: list(fact.faults.slice(0, MOST_NAMED).map(faultName)),
      };
    case 'cheap':
      return { minutes: minutes(fact.minutes) };
    case 'already-open':
      return { state: stateName(fact.state) };
    case 'then-watch':
      return {
        watch: fact.times > 1 ? t('bench.times', { step: stepName(fact.step), n: fact.times }) : stepName(fact.step),
      };
    case 'measure-first':
      return { part: kindName(fact.part) };
    case 'first-for':
      return { step: stepName(fact.step) };
    case 'dear':
      return { minutes: minutes(fact.minutes), for: '', because: t(`bench.because.${fact.because}`) };
    case 'confirms':
      return { part: kindName(fact.part) };
    default:
      return {};
  }
}

/** Why a step is not offered now. */
export function notOfferedWords({ why }: Pick<NotOffered, 'why'>, { list }: Pick<Words, 'list'>): string {
  switch (why.is) {
    case 'gate':
      return fill(notOfferedText('gate'), { first: list(why.firstDo.map(stepName)) });
    case 'no-loaner':
      return fill(notOfferedText('no-loaner'), { kind: kindName(why.kind), because: noLoanerText(why.because) });
    case 'own-first':
      return fill(notOfferedText('own-first'), { kind: kindName(why.kind) });
    case 'word':
      return fill(notOfferedText('word'), { need: needText(why.need) });
    default:
      return notOfferedText(why.is);
  }
}
