import type { Part } from '../../custody/ledger.ts';
import type { PartId } from '../../ids.ts';
import type { OldPartGoes, ReplacedPartFacts } from '../../papers/builders/replacedPartSlip.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import type { Question } from '../../word/question.ts';
import type { Job } from '../job.ts';
import { common, signatureFacts, wordFacts } from './common.ts';
import { type Lacking, lacking } from './lacking.ts';
import type { Making } from './making.ts';
import { chosenOf } from './ownersWord.ts';
import { newestQuestion, partName } from './worded.ts';

/** What becomes of the part that was replaced, and by whose word. */
export function replacedPartPaper(making: Making): Paper | Lacking {
  const { job, view, format, words } = making;
  const question = newestQuestion(
    making,
    (one) => isAccepted(one) && (making.part === null || one.offer?.forPart === making.part),
  );
  const part = question?.offer ? view.parts.get(question.offer.forPart) : undefined;
  if (!question?.answer || !part) return lacking('paper-nothing-replaced');
  const { verdict, handover } = job;
  const evidence =
    verdict?.is === 'confirmed' ? job.work.findLast((work) => verdict.evidence.includes(work.run)) : undefined;
  const way = verdict?.is === 'confirmed' && verdict.part === part.id ? words.facts.ways[verdict.way] : null;
  const goes = whereItGoes(part);
  return PAPER_KINDS['replaced-part-slip'].build(
    {
      ...common(making),
      part: { what: partName(making, part), ...(part.tag && { tag: part.tag }) },
      verdict:
        way === null
          ? { is: 'named' }
          : {
              is: 'confirmed',
              how: evidence ? format.say(words.facts.slipHow, { way, day: format.date(evidence.startedAt) }) : way,
            },
      goes,
      ...(goes.is !== 'returned' && { word: wordFacts(making, question.answer) }),
      data: dataOn(making, part),
      ...(handover && { signature: signatureFacts(making, handover.signature) }),
    },
    making.setting,
  );
}

const isAccepted = (question: Question): boolean =>
  question.offer !== null && !question.withdrawn && chosenOf(question).some((option) => option.agrees.accepts);

/** The owner's parts that others took the place of, in the order agreed to: each gets a slip of its own. */
export const replacedParts = ({ questions }: Job): readonly PartId[] => [
  ...new Set(questions.filter(isAccepted).flatMap(({ offer }) => (offer ? [offer.forPart] : []))),
];

function whereItGoes({ place }: Part): OldPartGoes {
  switch (place.at) {
    case 'kept':
      return { is: 'kept', until: place.until, place: place.shelf };
    case 'transit':
      return { is: 'sent', to: place.to };
    case 'away':
      return { is: 'sent', to: place.name };
    case 'gone':
      return { is: 'recycled' };
    default:
      return { is: 'returned' };
  }
}

/** A board keeps settings and may keep a key: it holds nothing only once that it was cleared stands in the record. */
function dataOn({ job }: Making, part: Part): ReplacedPartFacts['data'] {
  if (part.dataBearing) return 'can-hold-data';
  if (part.kind !== 'board') return 'none';
  const cleared = job.handover?.differences.some((one) => one.what === 'settings-cleared') ?? false;
  return cleared ? 'settings-cleared' : 'can-hold-data';
}
