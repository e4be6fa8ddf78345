import { asSentence } from '../../text/asSentence.ts';
import { opened, staffName } from '../common.ts';
import type { Making } from '../making.ts';

/**
 * What belongs to a fault that was named or confirmed wherever it is said: which of several it is or that this is not known,
 * that a technician named it by hand, and that it stays as it is.
 */
export function verdictDetail(making: Making): readonly string[] {
  const { job, words, format } = making;
  const { verdict } = job;
  if (verdict?.is !== 'named' && verdict?.is !== 'confirmed') return [];
  const { which, leftSo } = verdict;
  const byHand = verdict.is === 'named' ? verdict.byHand : undefined;
  const { facts } = words;
  return [
    ...(which
      ? [format.say(which.id === null ? facts.whichOpen : facts.which, { of: which.of, id: which.id ?? '' })]
      : []),
    ...(byHand
      ? [
          format.say(facts.namedByHand, {
            who: staffName(making, job.judgedBy ?? ''),
            why: asSentence(opened(making, byHand.why.value)),
          }),
        ]
      : []),
    ...(leftSo ? [format.say(facts.leftSo, { says: asSentence(opened(making, leftSo.says.value)) })] : []),
  ];
}
