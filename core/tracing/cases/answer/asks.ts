import { askFor } from '../../live/gates/ownersWords.ts';
import { stepOf } from '../../live/model/special.ts';
import type { FaultModel, Need, Owed, Step, StepOffer } from '../../live/types.ts';
import type { AskAnswer } from './answer.ts';

/**
 * What the owner would be asked for now: by the step proposed, or where it ends, for what takes days and was not asked yet.
 */
export function asksOf(model: FaultModel, offer: StepOffer): readonly AskAnswer[] {
  const { next, proposals, stop, notOffered } = offer;
  if (next) return askedBy(model, offer, stepOf(model, next.step));
  // What costs more than the machine is worth is not asked for piece by piece: that itself is what the owner is told.
  if (stop?.stop === 'hand-over' && stop.because === 'dearer-than-worth') return [];
  const asked = (need: Need) =>
    notOffered.some(({ step, why }) => why.is === 'done' && step === askFor(model.steps, need)?.id);
  const needs = [...new Set(proposals.map(({ need }) => need))].filter((need) => !asked(need));
  return [
    ...needs.map((id) => ({ id, for: proposals.filter(({ need }) => need === id).map(({ step }) => step) })),
    ...(stop?.stop === 'owed' ? owedAsks(stop.owed) : []),
  ];
}

/** By the gate that leaves it to the owner: whom they are to go to, in one word of the protocol's. */
const GO_TO: Readonly<Record<string, readonly string[]>> = {
  'extortion-owner-decides': ['police', 'insurer', 'backups'],
};

/** What safety still asks for and only a word of the owner's is lacking to; or whom they are sent to with it. */
const owedAsks = (owed: readonly Owed[]): readonly AskAnswer[] =>
  owed.flatMap(({ gate, steps }): readonly AskAnswer[] => {
    const goTo = GO_TO[gate];
    const lacking = steps.flatMap(({ step, why }) => (why?.is === 'word' ? [{ id: why.need, for: [step] }] : []));
    return goTo === undefined ? lacking : [{ id: goTo.join(', '), for: [] }];
  });

function askedBy(model: FaultModel, { notOffered }: StepOffer, next: Step): readonly AskAnswer[] {
  const words: readonly string[] = next.outcomes.flatMap(({ gives }) => gives);
  const [word] = words;
  if (word === undefined) return [];
  const held = notOffered.filter(
    ({ step, why }) =>
      (why.is === 'machine' && why.need === 'key-in-hand') ||
      (why.is === 'word' && stepOf(model, step).needs.some((one) => words.includes(one))),
  );
  return [{ id: word, for: held.map(({ step }) => step) }];
}
