import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { common, opened, staffName } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import type { Making } from '../making.ts';
import { partName } from '../worded.ts';

/** A data carrier was destroyed for good: how, with what, by whom, who looked it over, by whose word. */
export function certificatePaper(making: Making): Paper | Lacking {
  const { job, view, words, format, settings } = making;
  const done = job.destroyed.findLast((one) => making.part === null || one.part === making.part);
  const part = done && view.parts.get(done.part);
  if (!done || !part) return lacking('paper-no-erasure-recorded');
  const { facts } = words;
  const by = (id: string) => ({
    name: staffName(making, id),
    title: facts.certified.title,
    place: settings.name,
    contact: settings.phone,
  });
  const word = job.consents.own.destroy;
  return PAPER_KINDS['media-sanitisation-certificate'].build(
    {
      ...common(making),
      medium: {
        what: partName(making, part),
        ...done.medium,
        serial: opened(making, done.serial.value),
        ...(part.tag && { property: part.tag }),
        source: format.say(facts.certified.source, { machine: view.machine.called }),
        destination: facts.places['gone-destroyed'],
      },
      method: 'destroy',
      technique: done.technique,
      tool: done.tool,
      verification: {
        how: done.checked,
        ...(done.withoutErrors !== undefined && { withoutErrors: done.withoutErrors }),
      },
      doneBy: { ...by(done.by), at: done.at },
      verifiedBy: by(done.verifiedBy),
      ...(word && {
        word: format.say(facts.certified.word, { day: format.date(word.at), name: opened(making, word.name.value) }),
      }),
    },
    making.setting,
  );
}
