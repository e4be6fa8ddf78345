import { useState } from 'react';
import { fromWall } from '../../../core/calendar.ts';
import type { PartId } from '../../../core/ids.ts';
import type { Mishap } from '../../../core/job/home/mishaps.ts';
import { MISHAPS } from '../../../core/job/home/mishaps.ts';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { MomentField } from '../../kit/fields/DateField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { usePreview } from '../../link/usePreview.ts';
import { ContentChanged } from '../fields/ContentChanged.tsx';
import { freshHow, HowFields, howInput, howToSign } from '../fields/HowFields.tsx';
import { OneOf } from '../fields/OneOf.tsx';
import { OneOfParts } from '../fields/OneOfParts.tsx';
import { JobRow } from './JobRow.tsx';
import { answers, type OfJob, ownerPhone } from './sheetOf.ts';

/** What went wrong at our hands, and whether the owner was told: until then it does not go home. */
export function IncidentRow({ sheet, settings }: OfJob) {
  const { t, dayMonth, money } = useWords();
  const [writing, setWriting] = useState(false);
  const { incidents, stage } = sheet.job;
  return (
    <JobRow id="incidents" state={incidents.some((one) => !one.told) ? 'open' : 'known'}>
      {incidents.length === 0 && <p className="k-muted">{t('counter.incident.none')}</p>}
      {incidents.map((incident) => (
        <div key={incident.id} className="counter-block counter-stack">
          <p>
            <b>{incident.what.value ?? t('counter.erased')}</b>{' '}
            {t('counter.incident.happened', {
              day: dayMonth(incident.happenedAt ?? incident.at),
              how: t(`counter.incident.how.${incident.how ?? incident.cause}`),
            })}{' '}
            {incident.costMinor > 0 &&
              t('counter.incident.costs', {
                amount: money({ minor: incident.costMinor, currency: settings.currency }),
              })}{' '}
            {t(incident.told ? 'counter.incident.told' : 'counter.incident.not-told')}
          </p>
          {!incident.told && <TellIncident incident={incident.id} sheet={sheet} settings={settings} />}
        </div>
      ))}
      {stage !== 'gone-home' &&
        (writing ? (
          <ReportIncident sheet={sheet} settings={settings} onDone={() => setWriting(false)} />
        ) : (
          <Key kind="link" onPress={() => setWriting(true)}>
            {t('counter.incident.write')}
          </Key>
        ))}
    </JobRow>
  );
}

function TellIncident({ incident, sheet, settings }: OfJob & { readonly incident: string }) {
  const { t } = useWords();
  const { execute, problem, refusal, forget } = useExecute();
  const [how, setHow] = useState(() => freshHow(answers(sheet), ownerPhone(sheet), settings.zone));
  const given = howInput(how, settings.zone);
  const toldAs = (as: typeof given) => as && { job: sheet.job.id, incident, name: how.name.trim(), how: as };
  const preview = usePreview('tellIncident', toldAs(howToSign(how)));
  const tell = async () => {
    const told = toldAs(given);
    if (told) await execute('tellIncident', told);
  };
  return (
    <>
      <HowFields how={how} job={sheet.job.id} preview={preview} onChange={setHow} />
      <Key onPress={() => void tell()} {...(given ? {} : { whyNot: t('counter.how.open') })}>
        {t('counter.incident.owner-told')}
      </Key>
      {problem && <Problem slim {...problem} />}
      <ContentChanged
        refusal={refusal}
        signed={[how.mark?.under]}
        onClose={() => {
          forget();
          setHow({ ...how, mark: null });
        }}
      />
    </>
  );
}

const HOW = [...MISHAPS, 'unknown'] as const;
const PART_IS = ['hurt', 'dead', 'lost'] as const;

function ReportIncident({ sheet, settings, onDone }: OfJob & { readonly onDone: () => void }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [what, setWhat] = useState('');
  const [part, setPart] = useState<PartId | null>(null);
  const [partIs, setPartIs] = useState<(typeof PART_IS)[number] | null>(null);
  const [how, setHow] = useState<Mishap | 'unknown' | null>(null);
  const [at, setAt] = useState('');
  const [costMinor, setCost] = useState<number | null>(null);
  const { currency, zone } = settings;
  const write = async () => {
    const done = await execute('reportIncident', {
      job: sheet.job.id,
      what: what.trim(),
      part,
      partIs: part === null ? null : partIs,
      cause: how === null || how === 'unknown' ? 'unknown' : 'known',
      ...(how !== null && how !== 'unknown' && { how }),
      ...(at !== '' && { happenedAt: fromWall(at, zone) }),
      photographs: [],
      costMinor: costMinor ?? 0,
    });
    if (done) onDone();
  };
  return (
    <div className="counter-block counter-stack">
      <TextField label={t('counter.incident.what')} labelled="above" value={what} onChange={setWhat} lines={2} />
      {sheet.parts.length > 0 && (
        <OneOfParts
          asks={t('counter.incident.part')}
          parts={sheet.parts}
          chosen={part}
          onChoose={(one) => setPart(one?.id ?? null)}
        />
      )}
      {part !== null && (
        <OneOf
          asks={t('counter.incident.part-is')}
          words="incident.is"
          ids={PART_IS}
          chosen={partIs}
          onChoose={setPartIs}
        />
      )}
      <OneOf asks={t('counter.incident.cause')} words="incident.how" ids={HOW} chosen={how} onChoose={setHow} />
      <MomentField label={t('counter.incident.when')} value={at} onChange={setAt} />
      <AmountField
        label={t('counter.incident.cost')}
        labelled="above"
        currency={currency}
        minor={costMinor}
        onChange={setCost}
        says={t('counter.incident.cost-says')}
      />
      <Key onPress={() => void write()} {...(what.trim() ? {} : { whyNot: t('counter.incident.needs') })}>
        {t('counter.incident.keep')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
