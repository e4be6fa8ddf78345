import type { IncidentFacts } from '../../papers/builders/incident.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { asSentence } from '../../text/asSentence.ts';
import { amount, common, opened, signatureFacts, staffName, wordFacts } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import { partAfter } from '../lines/incidents.ts';
import { optionFacts } from '../lines/optionFacts.ts';
import type { Making, ToldIncident } from '../making.ts';
import { newestOpenQuestion, partName } from '../worded.ts';

/** What happened at our hands, as it was written down; with the owner's word that they were told, where they give it. */
export function incidentPaper(making: Making): Paper | Lacking {
  const { job, view, words, format, told } = making;
  const incident = told ? job.incidents.find(({ id }) => id === told.incident) : job.incidents.at(-1);
  if (!incident) return lacking('paper-no-incident');
  const { facts } = words;
  const part = incident.part === null ? undefined : view.parts.get(incident.part);
  const question = newestOpenQuestion(making, 'incident');
  const happened = asSentence(opened(making, incident.what.value));
  const first = /^.*?[.!?](?=\s)/s.exec(happened)?.[0] ?? happened;
  const rest = happened.slice(first.length).trim();
  const cost = incident.costMinor > 0 && format.money(amount(making, incident.costMinor));
  return PAPER_KINDS.incident.build(
    {
      ...common(making),
      happenedAt: incident.happenedAt ?? incident.at,
      what: first,
      more: [rest, partAfter(making, incident)].filter((text) => text !== ''),
      ...(part && { part: { what: partName(making, part), ...(part.tag && { tag: part.tag }) } }),
      causeKnown: incident.cause === 'known',
      present: [staffName(making, making.asking.by)],
      photographs: incident.photographs.length,
      means: cost ? `${facts.incidentMeans} ${format.say(facts.incidentCost, { amount: cost })}` : facts.incidentMeans,
      ...(question && { options: optionFacts(making, question) }),
      ...(told && ownersWord(making, told)),
    },
    making.setting,
  );
}

const ownersWord = (making: Making, { word }: ToldIncident): Pick<IncidentFacts, 'told' | 'signature'> => ({
  told: wordFacts(making, word),
  ...(word.how.by === 'counter' && { signature: signatureFacts(making, word.how.signature) }),
});
