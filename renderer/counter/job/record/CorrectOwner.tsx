import { useState } from 'react';
import { whoMayAnswer } from '../../../../core/approval/mayAnswer.ts';
import { HOW_TOLD, type HowTold } from '../../../../core/job/howTold.ts';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { OneOf } from '../../fields/OneOf.tsx';
import { PutRightForm } from '../../fields/PutRightForm.tsx';
import { OWNER_KINDS, OwnerKindFields } from '../../taking-in/OwnerKindFields.tsx';
import type { OwnerSheet } from '../../taking-in/sheet.ts';
import { freshOwner } from '../../taking-in/takeInInput.ts';
import type { OfJob } from '../sheetOf.ts';
import { ownerSheet } from './ownerSheet.ts';

const LANGUAGES = ['en', 'de', 'es', 'fr'] as const;

/** Everything that is written down of the owner, to be put right; who collects or decides by a word of theirs. */
export function CorrectOwner({ sheet, settings, onDone }: OfJob & { readonly onDone: () => void }) {
  const { t } = useWords();
  const { execute, problem, busy } = useExecute();
  const before = ownerSheet(sheet.owner);
  const [owner, setOwner] = useState(before);
  const [language, setLanguage] = useState(sheet.owner.language);
  const [by, setBy] = useState<string | null>(null);
  const [how, setHow] = useState<HowTold | null>(null);
  const change = (patch: Partial<OwnerSheet>) => setOwner({ ...owner, ...patch });
  const theirs = saysWho(owner) !== saysWho(before);
  const given = freshOwner(owner, language);
  const lacks = owner.name.trim() === '' ? t('counter.record.needs-name') : undefined;
  const lacksWord = theirs && (by === null || how === null) ? t('counter.record.needs-word') : undefined;
  const write = async () => {
    const word = theirs && by !== null && how !== null ? { name: by, how } : null;
    if (!busy && (await execute('correctOwner', { job: sheet.job.id, ...given, word }))) onDone();
  };
  const line = (field: 'name' | 'phone' | 'mail' | 'address' | 'may-collect', chars: number) => {
    const key = field === 'may-collect' ? 'mayCollect' : field;
    return (
      <TextField
        label={t(`counter.owner.${field}`)}
        labelled="above"
        value={owner[key]}
        onChange={(text) => change({ [key]: text })}
        chars={chars}
      />
    );
  };
  return (
    <PutRightForm
      label={t('counter.record.owner')}
      submit={t('counter.record.write')}
      whyNot={lacks ?? lacksWord}
      problem={problem}
      onWrite={() => void write()}
      onDone={onDone}
    >
      <div className="counter-fields">
        {line('name', 26)}
        {line('phone', 16)}
        {line('mail', 26)}
        {line('address', 34)}
        {line('may-collect', 34)}
      </div>
      <OneOf
        asks={t('counter.record.language')}
        words="record.languages"
        ids={LANGUAGES}
        chosen={LANGUAGES.find((one) => one === language) ?? null}
        onChoose={(id) => id && setLanguage(id)}
      />
      <OneOf
        asks={t('counter.owner.kind')}
        words="owner.kinds"
        ids={OWNER_KINDS}
        chosen={owner.kind}
        onChoose={(kind) => kind && change({ kind })}
      />
      <div className="counter-fields">
        <OwnerKindFields owner={owner} currency={settings.currency} onChange={change} />
      </div>
      {theirs && (
        <>
          <ChoiceKeys
            label={t('counter.record.by-whose-word')}
            mode="one"
            choices={whoMayAnswer(sheet.owner).map(({ name }) => ({ id: name, says: name }))}
            chosen={by === null ? [] : [by]}
            onChoose={([name]) => setBy(name ?? null)}
          />
          <OneOf asks={t('counter.record.how')} words="promised.how" ids={HOW_TOLD} chosen={how} onChoose={setHow} />
        </>
      )}
    </PutRightForm>
  );
}

/** What only the owner says: who collects and who decides. */
const saysWho = ({
  kind,
  guardian,
  machineOf,
  orderNumber,
  approves,
  approvesUpToMinor,
  alsoApprove,
  mayCollect,
}: OwnerSheet) =>
  JSON.stringify([kind, guardian, machineOf, orderNumber, approves, approvesUpToMinor, alsoApprove, mayCollect]);
