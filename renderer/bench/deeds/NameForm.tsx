import { useState } from 'react';
import type { JobSheet, TracingSheet } from '../../../core/contract/screens.ts';
import type { PartId } from '../../../core/ids.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { faultName } from '../../terms/terms.ts';
import { type SaidWhich, WhichOne } from './WhichOne.tsx';

/** A fault named on the technician's own word: why, which part, and which of several where there are. */
export function NameForm({
  sheet,
  suspect: { fault, part: blamed, oneOf },
  onDone,
}: {
  readonly sheet: JobSheet;
  readonly suspect: TracingSheet['suspects'][number];
  readonly onDone: () => void;
}) {
  const { t } = useWords();
  const { execute, problem, busy } = useExecute();
  const [why, setWhy] = useState('');
  const [which, setWhich] = useState<SaidWhich>(undefined);
  const parts = sheet.parts.filter((one) => one.belongs.to === 'owner' && one.kind === blamed);
  const [picked, setPicked] = useState<PartId | null>(parts.length === 1 ? (parts[0]?.id ?? null) : null);
  const asksWhich = oneOf !== null && !(oneOf === 'module' && picked !== null);
  const lacks = !why.trim()
    ? t('bench.name-needs')
    : asksWhich && which === undefined
      ? t('bench.which-needs')
      : undefined;
  const name = async () => {
    const said = asksWhich && which !== undefined ? { which } : {};
    if (busy) return;
    if (await execute('nameFault', { job: sheet.job.id, fault, part: picked, why: why.trim(), ...said })) onDone();
  };
  return (
    <form
      className="bench-form"
      aria-label={t('bench.name-by-hand')}
      onSubmit={(event) => {
        event.preventDefault();
        void name();
      }}
    >
      <p>
        <b>{faultName(fault)}</b>
      </p>
      <TextField label={t('bench.name-why')} labelled="above" lines={2} value={why} onChange={setWhy} autoFocus />
      {parts.length > 1 && (
        <ChoiceKeys
          label={t('bench.which-part')}
          mode="one"
          choices={parts.map((one) => ({
            id: one.id,
            says: one.place.at === 'slot' ? `${one.name}, ${one.place.slot}` : one.name,
          }))}
          chosen={picked === null ? [] : [picked]}
          onChoose={([id]) => setPicked(parts.find((one) => one.id === id)?.id ?? null)}
        />
      )}
      {asksWhich && <WhichOne sheet={sheet} of={oneOf} which={which} onWhich={setWhich} />}
      <Key submit whyNot={lacks}>
        {t('bench.name-it')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
