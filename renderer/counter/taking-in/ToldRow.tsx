import { useState } from 'react';
import { GROUPS } from '../../../core/tracing/live/groups.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { copiesFirst, looksFirst, symptomSays, symptomsOf, termsFor, termsIn } from '../terms.ts';
import { Row } from './Row.tsx';
import { useTakingIn } from './sheetContext.tsx';

/** Shown without asking for more: what is told most, then what shares words with what was told. */
const USUAL = ['no-reaction', 'dark-runs', 'no-signal', 'restarts-itself', 'beeps', 'freezes', 'shuts-off'] as const;
const AT_MOST = 6;

/** The symptom in the owner's own words, and beside it in terms that the bench can set against what it sees. */
export function ToldRow() {
  const { t } = useWords();
  const { sheet, write } = useTakingIn();
  const [typed, setTyped] = useState('');
  const [all, setAll] = useState(false);
  const near =
    typed.trim() !== ''
      ? termsFor(typed).slice(0, 12)
      : [...new Set([...termsIn(sheet.ownWords, 4), ...USUAL])].slice(0, AT_MOST);
  const shown = [...new Set([...sheet.symptoms, ...near])];
  return (
    <Row id="told" known={sheet.ownWords.trim() !== '' && sheet.symptoms.length > 0}>
      <TextField
        label={t('counter.told.own-words')}
        labelled="heard"
        hint={t('counter.told.own-words-hint')}
        value={sheet.ownWords}
        onChange={(ownWords) => write({ ownWords })}
        lines={2}
      />
      <div className="counter-terms">
        <Terms label={t('counter.told.terms')} ids={shown} />
        <div className="counter-line">
          <TextField
            label={t('counter.told.find-term')}
            labelled="heard"
            hint={t('counter.told.find-term')}
            value={typed}
            onChange={setTyped}
            chars={24}
          />
          <Key kind="link" onPress={() => setAll(!all)}>
            {t(all ? 'counter.told.fewer' : 'counter.told.all')}
          </Key>
        </div>
        {all &&
          GROUPS.map((group) => (
            <div key={group}>
              <p className="counter-asks">{t(`counter.groups.${group}`)}</p>
              <Terms label={t(`counter.groups.${group}`)} ids={symptomsOf(group)} />
            </div>
          ))}
      </div>
      {looksFirst(sheet.symptoms) && (
        <p role="note">
          <b>{t('counter.told.look-first')}</b>
        </p>
      )}
      {copiesFirst(sheet.symptoms) && (
        <p role="note">
          <b>{t('counter.told.copy-first')}</b>
        </p>
      )}
    </Row>
  );
}

function Terms({ label, ids }: { readonly label: string; readonly ids: readonly string[] }) {
  const { sheet, write } = useTakingIn();
  return (
    <ChoiceKeys
      label={label}
      choices={ids.map((id) => ({ id, says: symptomSays(id) }))}
      chosen={sheet.symptoms.filter((id) => ids.includes(id))}
      onChoose={(chosen) =>
        write({ symptoms: [...sheet.symptoms.filter((id) => !ids.includes(id)), ...chosen].slice(0, 12) })
      }
    />
  );
}
