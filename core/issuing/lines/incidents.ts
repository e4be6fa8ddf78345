import type { Job } from '../../job/job.ts';
import { asSentence } from '../../text/asSentence.ts';
import { opened } from '../common.ts';
import type { Making } from '../making.ts';
import { partName } from '../worded.ts';

type Incident = Job['incidents'][number];

/** What became of the part: damaged, dead or lost; nothing where no part came to harm. */
export function partAfter(making: Making, { part: id, partIs }: Incident): string {
  const part = id === null ? undefined : making.view.parts.get(id);
  if (!part || !partIs) return '';
  return asSentence(making.format.say(making.words.facts.incidentPart[partIs], { part: partName(making, part) }));
}

/** Each thing that went wrong at our hands, with its day, what became of the part, and who pays. */
export function incidentLines(making: Making): readonly string[] {
  const { job, format, words } = making;
  const lines = job.incidents.map((incident) => {
    const what = asSentence(opened(making, incident.what.value));
    const says = format.say(words.facts.incidentSays, { day: format.date(incident.happenedAt ?? incident.at), what });
    return [says, partAfter(making, incident)].filter((text) => text !== '').join(' ');
  });
  return lines.length > 0 ? [...lines, words.facts.incidentPaid] : [];
}
