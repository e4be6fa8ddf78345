import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { BackupSettings, BackupSheet } from '../../../core/contract/backupSheet.ts';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { wordsOfError, wordsOfRefusal } from '../../link/refusalWords.ts';
import { queryOf, service } from '../../link/service.ts';

/** The shop's backups: how the last ones went, where they lie, and one more by hand. */
export function BackupsPane() {
  const { data } = useQuery(queryOf.backups.queryOptions({ refetchOnMount: 'always' }));
  return data ? <OfBackups key={JSON.stringify(data.settings)} sheet={data} /> : null;
}

function OfBackups({ sheet }: { readonly sheet: BackupSheet }) {
  const { t } = useWords();
  const queries = useQueryClient();
  const [set, setSet] = useState(sheet.settings);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<ReturnType<typeof wordsOfError> | null>(null);
  const ask = async (work: () => Promise<BackupSheet>) => {
    setBusy(true);
    try {
      queries.setQueryData(queryOf.backups.queryKey(), await work());
      setProblem(null);
    } catch (error) {
      setProblem(wordsOfError(error));
      await queries.invalidateQueries({ queryKey: queryOf.backups.queryKey() });
    }
    setBusy(false);
  };
  const change = (part: Partial<BackupSettings>) => setSet({ ...set, ...part });
  const waits = busy ? { whyNot: t('reckoning.backups.busy') } : {};
  return (
    <section className="promise-settings" aria-label={t('reckoning.backups.title')}>
      <h2>{t('reckoning.backups.title')}</h2>
      <HowTheyWent sheet={sheet} />
      <div className="promise-settings-row">
        <Key onPress={() => void ask(() => service.backUpNow())} {...waits}>
          {t('reckoning.backups.now')}
        </Key>
        {busy && <span role="status">{t('reckoning.backups.busy')}</span>}
      </div>
      <div className="promise-settings-row">
        <TextField
          label={t('reckoning.backups.place')}
          says={t('reckoning.backups.place-says')}
          value={set.place ?? ''}
          onChange={(place) => change({ place: place.trim() || null })}
        />
        <TextField
          label={t('reckoning.backups.key-place')}
          says={t('reckoning.backups.key-place-says')}
          value={set.keyPlace ?? ''}
          onChange={(keyPlace) => change({ keyPlace: keyPlace.trim() || null })}
        />
        <NumberField
          label={t('reckoning.backups.allowed')}
          value={set.allowedDays}
          onChange={(days) => change({ allowedDays: days ?? set.allowedDays })}
          least={1}
          most={90}
          digits={0}
        />
        <Key onPress={() => void ask(() => service.setBackups(set))} {...waits}>
          {t('reckoning.backups.keep')}
        </Key>
      </div>
      {problem && <Problem slim {...problem} />}
    </section>
  );
}

function HowTheyWent({ sheet }: { readonly sheet: BackupSheet }) {
  const { t, moment } = useWords();
  const { last, lastGood, kept, place, keyPlace, sameDisk } = sheet;
  const refusal = last?.refusal ? wordsOfRefusal(last.refusal) : null;
  return (
    <>
      <p>
        {lastGood
          ? t('reckoning.backups.last-good', { at: moment(lastGood.at), seq: lastGood.seq })
          : t('reckoning.backups.none-good')}
      </p>
      {last && last.file !== null && last.proved === 'not-yet' && (
        <p>{t('reckoning.backups.not-yet', { at: moment(last.at) })}</p>
      )}
      {refusal && <Problem slim {...refusal} />}
      <p>{t('reckoning.backups.where', { place, keyPlace, n: kept })}</p>
      {sameDisk && <p>{t('reckoning.backups.same-disk')}</p>}
    </>
  );
}
