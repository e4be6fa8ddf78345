import type { Place } from './place.ts';

/** What the owner said of one of their parts, as far as a place turns on it. */
export type OwnersWord = {
  readonly answer: PartAnswer;
  /** Signed for by itself: data may be destroyed. */
  readonly destroy: boolean;
  /** Sent out to be tested by the owner's own yes to that: it comes back, and does not go home without. */
  readonly outAndBack: boolean;
};

/** Places in which an owner's part is only by the owner's word for that part. */
export const needsWord = (place: Place): boolean => ['kept', 'transit', 'away', 'gone'].includes(place.at);

/**
 * Does the owner's word for a part allow this place? Kept, sent and scrapped each need that very answer; nothing of the
 * owner's is sold or given away. What was kept up to its day may be recycled after it, as the owner agreed. A part that holds data is destroyed with a certificate, never only scrapped.
 */
export function agreesWith(place: Place, word: OwnersWord, dataBearing: boolean, keptOver = false): boolean {
  switch (place.at) {
    case 'kept':
      return word.answer === 'keep';
    case 'transit':
    case 'away':
      return word.answer === 'send' || (word.outAndBack && !dataBearing);
    case 'gone':
      if (dataBearing)
        return (
          place.why === 'destroyed' && place.certificate !== undefined && (word.destroy || word.answer === 'scrap')
        );
      if (place.why === 'recycled' && word.answer === 'keep') return keptOver;
      return (place.why === 'recycled' || place.why === 'destroyed') && word.answer === 'scrap';
    default:
      return true;
  }
}

/** What an owner can want done with a part of theirs. */
export const PART_ANSWERS = ['back', 'keep', 'send', 'scrap', 'follow'] as const;
export type PartAnswer = (typeof PART_ANSWERS)[number];
