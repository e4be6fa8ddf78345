import type { Word } from '../model/needs.ts';
import { knownStep } from '../model/special.ts';
import type { FaultModel, Need, Step, TracingCase } from '../types.ts';

type Now = Pick<TracingCase, 'agreed' | 'machine' | 'log' | 'signatures' | 'money'>;

/** Words that are given by a signature of their own alone. */
const BY_SIGNATURE: readonly Word[] = ['risk', 'key-or-risk'];
/** Words that are given by an answer to a question of its own, with its money and its days. */
const BY_QUESTION: readonly Word[] = ['order-to-try', 'send-out', 'limit'];

/** Is this word of the owner's there: agreed to on the sheet, or given when they were asked while tracing? */
export function hasWord(model: FaultModel, now: Now, word: Word): boolean {
  const { agreed, machine } = now;
  if (word === 'key') return machine.keyInHand || wasGiven(model, now, word);
  if (word === 'key-or-risk')
    return machine.encrypted === 'no' || machine.keyInHand || agreed.includes('risk-key') || wasGiven(model, now, word);
  if (word === 'limit') return now.money.limitMinor === null || wasGiven(model, now, word);
  return agreed.includes(word) || wasGiven(model, now, word);
}

/** Does what they say when asked while tracing leave this word to the sheet? */
const isOnTheSheet = ({ signatures }: Pick<Now, 'signatures'>, word: Word): boolean =>
  (BY_QUESTION.includes(word) && signatures !== 'in-the-log') ||
  (BY_SIGNATURE.includes(word) && signatures === 'on-the-sheet');

/** Said when they were asked. That they will sign opens nothing yet where they sign on the sheet. */
function wasGiven(model: FaultModel, now: Now, word: Word): boolean {
  const counts = (gives: readonly Word[]) => gives.includes(word) && !gives.every((one) => isOnTheSheet(now, one));
  return now.log.some((entry) => {
    const step = entry.struck ? undefined : knownStep(model, entry.step);
    return step?.outcomes.some(({ id, gives }) => id === entry.outcome && counts(gives)) ?? false;
  });
}

/** Words that a step needs and the owner has not given. */
export const lackingWords = (model: FaultModel, now: Now, { needs }: Pick<Step, 'needs'>): readonly Need[] =>
  needs.filter((need) => !hasWord(model, now, need));

/**
 * Would asking this give anything that is not there? A key is lacking only where a disk may be encrypted; days and money are
 * asked for as a step only where the answer counts from the log.
 */
export const asksForLacking = (model: FaultModel, now: Now, step: Step): boolean =>
  step.outcomes.some(({ gives }) =>
    gives.some(
      (word) =>
        !hasWord(model, now, word) &&
        !(word === 'key' && now.machine.encrypted === 'no') &&
        !(BY_QUESTION.includes(word) && isOnTheSheet(now, word)),
    ),
  );

/** The step that asks the owner for a word, where the model has one. */
export const askFor = (steps: readonly Step[], word: Word): Step | undefined =>
  steps.find(({ outcomes }) => outcomes.some(({ gives }) => gives.includes(word)));
