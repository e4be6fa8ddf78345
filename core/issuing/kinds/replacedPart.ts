import { chosenOf, type Question } from '../../approval/question.ts';
import type { Part } from '../../custody/ledger.ts';
import type { Machine } from '../../custody/machine.ts';
import type { View } from '../../entries/view.ts';
import { type PartId, type QuestionId, questionId } from '../../ids.ts';
import type { Job } from '../../job/job.ts';
import type { OldPartGoes, ReplacedPartFacts } from '../../papers/builders/replacedPartSlip.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { common, wordFacts } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import type { Making } from '../making.ts';
import { partName } from '../worded.ts';

/** What becomes of the part that was replaced, and by whose word. */
export function replacedPartPaper(making: Making): Paper | Lacking {
  const { job, view, format, words } = making;
  const replaced = replacedBy(view);
  const id = making.part ?? [...replaced.keys()].at(-1);
  const part = id === undefined ? undefined : view.parts.get(id);
  if (!part || !replaced.has(part.id)) return lacking('paper-nothing-replaced');
  const answer = job.questions.find((one) => one.id === replaced.get(part.id))?.answer;
  const { verdict } = job;
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
      ...(goes.is !== 'returned' && answer && { word: wordFacts(making, answer) }),
      data: dataOn(making, part),
    },
    making.setting,
  );
}

const isAccepted = (question: Question): boolean =>
  question.offer !== null && !question.withdrawn && chosenOf(question).some((option) => option.agrees.accepts);

/** The owner's parts that others took the place of, in the order agreed to: each gets a slip of its own. */
export const replacedParts = (view: Of): readonly PartId[] => [...replacedBy(view).keys()];

type Of = Pick<View, 'parts'> & { readonly job: Job; readonly machine: Machine };

/**
 * The owner's parts that others took the place of, each with the question whose answer agreed to that; null where the
 * owner brought the new one. By an offer that was accepted, or by what came in this job, bought or brought, and now sits
 * where the old part did when the machine came.
 */
function replacedBy({ job, machine, parts }: Of): ReadonlyMap<PartId, QuestionId | null> {
  const replaced = new Map<PartId, QuestionId | null>(
    job.questions.filter(isAccepted).flatMap(({ id, offer }) => (offer ? [[offer.forPart, id] as const] : [])),
  );
  const came = Object.values(machine.atTakingIn);
  for (const [slot, was] of Object.entries(machine.atTakingIn)) {
    const now = machine.inside[slot];
    const old = parts.get(was);
    if (now === undefined || !old || replaced.has(was) || came.includes(now) || !job.parts.includes(now)) continue;
    // What sits elsewhere inside was only moved; what came out before this job is none of its parts.
    const cameOut = old.place.at !== 'slot' && old.cameOutFor === job.id;
    const line = job.agreedLines.find(({ part }) => part === now);
    if (cameOut && parts.get(now)?.belongs.to === 'owner') replaced.set(was, line ? questionId(line.question) : null);
  }
  return replaced;
}

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
