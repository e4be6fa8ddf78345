import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { JobId, PartId } from '../../core/ids.ts';
import { TextField } from '../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../kit/keys/ChoiceKeys.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { useWords } from '../kit/text/words.tsx';
import { shopRead } from '../link/reads.ts';
import { useExecute } from '../link/useExecute.ts';
import './parts.css';

const FIELDS = ['maker', 'model', 'serial', 'type', 'technique', 'tool', 'checked'] as const;
type Fields = Readonly<Record<(typeof FIELDS)[number], string>>;
const FOUND = ['none', 'some'] as const;
type Found = (typeof FOUND)[number];
const EMPTY: Fields = { maker: '', model: '', serial: '', type: '', technique: '', tool: '', checked: '' };

type DestroyFormProps = {
  readonly job: JobId;
  readonly part: { readonly id: PartId; readonly name: string };
  readonly onDone: () => void;
};

/** A data carrier is destroyed for good: what it was, how, who looked it over. Out comes the certificate. */
export function DestroyForm({ job, part, onDone }: DestroyFormProps) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const staff = useQuery(shopRead()).data?.staff ?? [];
  const [said, setSaid] = useState<Fields>(EMPTY);
  const [verifiedBy, setVerifiedBy] = useState<string | null>(null);
  const [found, setFound] = useState<Found | null>(null);
  const ready = verifiedBy !== null && found !== null && FIELDS.every((field) => said[field].trim() !== '');
  const destroy = async () => {
    if (verifiedBy === null || found === null) return;
    const { maker, model, serial, type, technique, tool, checked } = said;
    const medium = { maker, model, serial, type };
    const done = { medium, technique, tool, checked, withoutErrors: found === 'none', verifiedBy };
    if (await execute('destroyPart', { job, part: part.id, ...done })) onDone();
  };
  return (
    <fieldset className="parts-form">
      <legend>{t('wall.destroy.what', { part: part.name })}</legend>
      <p>{t('wall.destroy.caution')}</p>
      {FIELDS.map((field) => (
        <TextField
          key={field}
          label={t(`wall.destroy.${field}`)}
          labelled="above"
          value={said[field]}
          onChange={(value) => setSaid({ ...said, [field]: value })}
        />
      ))}
      <ChoiceKeys
        label={t('wall.destroy.errors')}
        labelled="above"
        mode="one"
        choices={FOUND.map((id) => ({ id, says: t(`wall.destroy.found.${id}`) }))}
        chosen={found === null ? [] : [found]}
        onChoose={([id]) => setFound(id ?? null)}
      />
      <ChoiceKeys
        label={t('wall.destroy.verified')}
        labelled="above"
        mode="one"
        choices={staff.map(({ id, name }) => ({ id, says: name }))}
        chosen={verifiedBy === null ? [] : [verifiedBy]}
        onChoose={([id]) => setVerifiedBy(id ?? null)}
      />
      <Key onPress={() => void destroy()} {...(ready ? {} : { whyNot: t('wall.destroy.needs') })}>
        {t('wall.destroy.do')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </fieldset>
  );
}
