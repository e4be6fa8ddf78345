import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import purposes from '../../../assets/words/en/persons.json';
import type { PersonSheet } from '../../../core/contract/personsSheet.ts';
import { USUAL_BILL_YEARS } from '../../../core/job/erasure.ts';
import type { ShopSettings } from '../../../core/job/shop.ts';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { wordsOfError } from '../../link/refusalWords.ts';
import { saveFile } from '../../link/saveFile.ts';
import { queryOf, service } from '../../link/service.ts';
import { useExecute } from '../../link/useExecute.ts';

/** What is held of owners: whose time is over, one looked for, all of it as a file, and its erasure. */
export function PersonsPane({ settings }: { readonly settings: ShopSettings }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const due = useQuery(queryOf.personsDue.queryOptions({ refetchOnMount: 'always' }));
  const [text, setText] = useState('');
  const [years, setYears] = useState<number | null>(settings.rules.billYears ?? USUAL_BILL_YEARS);
  const [kept, setKept] = useState(false);
  const hits = useQuery({ ...queryOf.find.queryOptions({ input: { text } }), enabled: text.trim().length > 1 });
  const jobs = [...new Set((hits.data ?? []).flatMap(({ job }) => (job ? [job] : [])))].slice(0, 5);
  const keepYears = async () => {
    if (years === null) return;
    const rules = { ...settings.rules, billYears: years };
    setKept((await execute('changeShop', { settings: { ...settings, rules } })) !== null);
  };
  return (
    <section className="promise-settings" aria-label={t('persons.pane.title')}>
      <h2>{t('persons.pane.title')}</h2>
      <p>{t('persons.pane.says')}</p>
      {due.data && (
        <p>{t(due.data.due.length > 0 ? 'persons.pane.due' : 'persons.pane.none-due', { days: due.data.days })}</p>
      )}
      {due.data?.due.map((person) => (
        <PersonRow key={person.owner} person={person} />
      ))}
      <TextField label={t('persons.pane.look')} says={t('persons.pane.look-says')} value={text} onChange={setText} />
      {jobs.map((job) => (
        <PersonOfJob key={job} job={job} />
      ))}
      <div className="promise-settings-row">
        <NumberField
          label={t('persons.pane.bill-years')}
          value={years}
          onChange={setYears}
          least={0}
          most={50}
          digits={0}
        />
        <Key onPress={() => void keepYears()}>{t('persons.pane.keep')}</Key>
        {kept && <span role="status">{t('persons.pane.kept')}</span>}
      </div>
      {problem && <Problem slim {...problem} />}
    </section>
  );
}

function PersonOfJob({ job }: { readonly job: Parameters<typeof service.personOf>[0]['job'] }) {
  const { data } = useQuery(queryOf.personOf.queryOptions({ input: { job }, refetchOnMount: 'always' }));
  return data ? <PersonRow person={data} /> : null;
}

function PersonRow({ person }: { readonly person: PersonSheet }) {
  const { t, dateYear, list } = useWords();
  const { execute, problem } = useExecute();
  const queries = useQueryClient();
  const [sure, setSure] = useState(false);
  const [wrong, setWrong] = useState<ReturnType<typeof wordsOfError> | null>(null);
  const name = person.name ?? t('persons.erased');
  const named = (all: PersonSheet['goes']) => list(all.map((purpose) => purposes.purposes[purpose]));
  const erase = async () => {
    if (!(await execute('eraseOwner', { owner: person.owner, asked: true }))) return;
    for (const key of [queryOf.personsDue.key(), queryOf.personOf.key(), queryOf.find.key()])
      await queries.invalidateQueries({ queryKey: key });
  };
  const save = async () => {
    try {
      saveFile(await service.personFile({ owner: person.owner }), 'person.json');
      setWrong(null);
    } catch (error) {
      setWrong(wordsOfError(error));
    }
  };
  return (
    <div>
      <p>
        <b>{name}</b> {person.over !== null && t('persons.pane.over', { day: dateYear(person.over) })}
      </p>
      {person.open.length > 0 && <p>{t('persons.pane.open', { n: person.open.length })}</p>}
      {person.open.length === 0 && (
        <p>
          {person.goes.length > 0 ? t('persons.pane.goes', { what: named(person.goes) }) : t('persons.pane.nothing')}
        </p>
      )}
      {person.stays.map(({ purpose, until }) => (
        <p key={purpose}>{t('persons.pane.stays', { day: dateYear(until), what: named([purpose]) })}</p>
      ))}
      <div className="promise-settings-row">
        <Key kind="quiet" onPress={() => void save()}>
          {t('persons.pane.export')}
        </Key>
        {person.goes.length > 0 &&
          (sure ? (
            <Key onPress={() => void erase()}>{t('persons.pane.sure', { name })}</Key>
          ) : (
            <Key kind="quiet" onPress={() => setSure(true)}>
              {t('persons.pane.erase')}
            </Key>
          ))}
      </div>
      {problem && <Problem slim {...problem} />}
      {wrong && <Problem slim {...wrong} />}
    </div>
  );
}
