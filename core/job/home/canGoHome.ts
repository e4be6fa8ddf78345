import { isOpen } from '../../approval/question.ts';
import type { Part } from '../../custody/ledger.ts';
import type { Machine } from '../../custody/machine.ts';
import { agreesWith, needsWord } from '../../custody/ownersWord.ts';
import type { Place } from '../../custody/place.ts';
import type { PartId } from '../../ids.ts';
import { wordForPart } from '../approval/partAnswer.ts';
import type { Job } from '../job.ts';

/** One thing that keeps a machine from going home. */
export type Missing =
  | {
      readonly why: 'part-on-trial-inside';
      readonly part: PartId;
      readonly tag: string | null;
      readonly name: string;
      readonly slot: string;
    }
  | { readonly why: 'ours-on-machine'; readonly thing: string; readonly count: number }
  | {
      readonly why: 'owners-part-not-inside';
      readonly part: PartId;
      readonly tag: string | null;
      readonly name: string;
      readonly place: Part['place'];
    }
  | { readonly why: 'needs-own-answer'; readonly part: PartId; readonly name: string; readonly place: Part['place'] }
  | { readonly why: 'still-unplugged'; readonly slot: string }
  | { readonly why: 'incident-not-told'; readonly incident: string }
  | { readonly why: 'question-open'; readonly question: string };

/**
 * Can this machine go home, and if not, what is missing? The one answer for the guard, the Counter and the return
 * report: nothing of the shop's in it unless sold or lent, nothing of the owner's missing unless the owner said so.
 */
export function canGoHome(job: Job, machine: Machine, parts: ReadonlyMap<PartId, Part>): readonly Missing[] {
  const missing: Missing[] = [];
  for (const id of new Set([...machine.parts, ...job.parts])) {
    const part = parts.get(id);
    if (!part) continue;
    const place = placeOf(part, parts);
    const inside = place.at === 'slot' && place.machine === machine.id;
    if (part.belongs.to === 'shop') {
      if (inside && !goesHomeWith(part, parts))
        missing.push({ why: 'part-on-trial-inside', part: id, tag: part.tag, name: part.name, slot: place.slot });
    } else if (!inside) {
      const problem = ownersPartOutside(job, part, place);
      if (problem) missing.push(problem);
    }
  }
  for (const { thing, count } of job.shopItemsOn) missing.push({ why: 'ours-on-machine', thing, count });
  for (const slot of machine.unplugged) if (machine.inside[slot]) missing.push({ why: 'still-unplugged', slot });
  for (const incident of job.incidents)
    if (!incident.told) missing.push({ why: 'incident-not-told', incident: incident.id });
  for (const question of job.questions)
    if (isOpen(question)) missing.push({ why: 'question-open', question: question.id });
  return missing;
}

/** Where a part is: what moves with another is where that one is. */
const placeOf = (part: Part, parts: ReadonlyMap<PartId, Part>): Place =>
  part.place.at === 'with' ? (parts.get(part.place.part)?.place ?? part.place) : part.place;

/** Is it lent, or does it move as one with a part of ours, which then answers for both? */
function goesHomeWith(part: Part, parts: ReadonlyMap<PartId, Part>): boolean {
  if (part.title?.as === 'lent') return true;
  return part.place.at === 'with' && parts.get(part.place.part)?.belongs.to === 'shop';
}

function ownersPartOutside(job: Job, part: Part, place: Place): Missing | null {
  if (place.at === 'with-owner') return null;
  if (job.incidents.some((incident) => incident.part === part.id && incident.told)) return null;
  // What is out to be tested comes back first.
  const word = { ...wordForPart(job, part.id, part.dataBearing), outAndBack: false };
  const follows = word.answer === 'follow' && place.at !== 'not-found' && place.at !== 'gone';
  if (follows || (needsWord(place) && agreesWith(place, word, part.dataBearing, true))) return null;
  if (part.dataBearing && place.at !== 'not-found')
    return { why: 'needs-own-answer', part: part.id, name: part.name, place };
  return { why: 'owners-part-not-inside', part: part.id, tag: part.tag, name: part.name, place };
}
