import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Place } from '../../../core/custody/place.ts';
import type { Work } from '../../../core/job/work.ts';
import type { StepHandling } from '../../../core/tracing/live/types.ts';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { ArrivedKeys, SendForm } from '../../parts/SendForm.tsx';
import { placeWords } from '../inside/insideOf.ts';

type SendOutProps = { readonly sheet: JobSheet; readonly work: Work; readonly sends: StepHandling['sends'] };

/** The part of theirs that a step sends out: on its way to whom, there, and back with the step's outcome. */
export function SendOut({ sheet, work, sends }: SendOutProps) {
  const words = useWords();
  const { execute, problem } = useExecute();
  const job = sheet.job.id;
  const part = sheet.parts.find((one) => one.kind === sends && work.took.some((took) => took.part === one.id));
  if (!part) return null;
  const { place } = part;
  const move = (to: Place) =>
    void execute('movePart', { job, part: part.id, from: place, to, why: 'hand', says: null });
  return (
    <section className="bench-form" aria-label={part.name}>
      {place.at === 'tray' && <SendForm part={part.name} onSend={move} />}
      {(place.at === 'transit' || place.at === 'away') && (
        <p>
          <b>{part.name}</b>: {placeWords(place, words)}. {words.t('bench.back-with-outcome')}
        </p>
      )}
      {place.at === 'transit' && <ArrivedKeys to={place.to} onArrived={move} />}
      {problem && <Problem slim {...problem} />}
    </section>
  );
}
