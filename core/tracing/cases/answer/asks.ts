import { stepOf } from '../../live/model/special.ts';
import type { FaultModel, Offer, Step } from '../../live/types.ts';
import type { Ask } from './answer.ts';

/**
 * What the owner would be asked for now: by the step proposed, or where it ends, for what takes days, or for more money.
 */
export function asksOf(model: FaultModel, offer: Offer): readonly Ask[] {
  const { next, proposals, stop } = offer;
  if (next) return askedBy(model, offer, stepOf(model, next.step));
  // What costs more than the machine is worth is not asked for piece by piece: that itself is what the owner is told.
  if (stop?.stop === 'hand-over' && stop.because === 'dearer-than-worth') return [];
  const needs = [...new Set(proposals.map(({ need }) => need))];
  return [
    ...needs.map((id) => ({ id, for: proposals.filter(({ need }) => need === id).map(({ step }) => step) })),
    ...(stop?.stop === 'hand-over' && stop.because === 'dearer-than-limit' ? [{ id: 'limit', for: [] }] : []),
  ];
}

function askedBy(model: FaultModel, { notOffered }: Offer, next: Step): readonly Ask[] {
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
