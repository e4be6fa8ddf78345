import { useState } from 'react';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { CHANGED_IDS, changedSays, OFTEN_IDS, ONLY_WHEN_IDS, oftenSays, onlyWhenSays } from '../terms.ts';
import { Row } from './Row.tsx';
import type { ChangedLine } from './sheet.ts';
import { useTakingIn } from './sheetContext.tsx';

/** What changed last, by one key each; a chosen key pressed again asks since when and what. */
export function ChangedRow() {
  const { t, named } = useWords();
  const { sheet, write } = useTakingIn();
  const [open, setOpen] = useState<string | null>(null);
  const line = sheet.changed.find((one) => one.id === open);
  const change = (patch: Partial<ChangedLine>) =>
    write({ changed: sheet.changed.map((one) => (one.id === open ? { ...one, ...patch } : one)) });
  return (
    <Row id="changed" known={sheet.changed.length > 0}>
      <ChoiceKeys
        label={t('counter.rows.changed')}
        numbered
        choices={CHANGED_IDS.map((id) => ({ id, says: named('counter.changed', id) }))}
        chosen={sheet.changed.map((one) => one.id)}
        onChoose={(ids) => {
          write({
            changed: ids.map((id) => sheet.changed.find((one) => one.id === id) ?? { id, since: '', what: '' }),
          });
          setOpen(ids.find((id) => !sheet.changed.some((one) => one.id === id)) ?? null);
        }}
        onAgain={(id) => setOpen(open === id ? null : id)}
      />
      {line && (
        <fieldset className="counter-in-place">
          <legend>{changedSays(line.id)}</legend>
          <TextField
            label={t('counter.changed-more.since')}
            labelled="above"
            value={line.since}
            onChange={(since) => change({ since })}
            chars={22}
          />
          <TextField
            label={t('counter.changed-more.what')}
            labelled="above"
            value={line.what}
            onChange={(what) => change({ what })}
            chars={30}
          />
          <Key
            onPress={() => {
              write({ changed: sheet.changed.filter((one) => one.id !== line.id) });
              setOpen(null);
            }}
          >
            {t('counter.changed-more.not-that')}
          </Key>
        </fieldset>
      )}
    </Row>
  );
}

/** How often, since when, and only when: what tells a fault that is always there from one that comes and goes. */
export function OftenRow() {
  const { t } = useWords();
  const { sheet, write } = useTakingIn();
  const [more, setMore] = useState(sheet.onlyWhen.length > 0);
  return (
    <Row id="often" known={sheet.often.length > 0}>
      <ChoiceKeys
        label={t('counter.rows.often')}
        choices={OFTEN_IDS.map((id) => ({ id, says: oftenSays(id) }))}
        chosen={sheet.often}
        onChoose={(often) => write({ often: often.slice(0, 4) })}
      />
      <div className="counter-fields">
        <NumberField
          label={t('counter.often.since-days')}
          labelled="above"
          value={sheet.sinceDays}
          onChange={(sinceDays) => write({ sinceDays })}
          least={0}
          most={20000}
          unit={t('counter.often.days')}
        />
        <TextField
          label={t('counter.often.last-worked')}
          labelled="above"
          value={sheet.lastWorked}
          onChange={(lastWorked) => write({ lastWorked })}
          chars={24}
        />
        <Key kind="link" onPress={() => setMore(!more)}>
          {t('counter.often.only-when')}
        </Key>
      </div>
      {more && (
        <ChoiceKeys
          label={t('counter.often.only-when')}
          choices={ONLY_WHEN_IDS.map((id) => ({ id, says: onlyWhenSays(id) }))}
          chosen={sheet.onlyWhen}
          onChoose={(onlyWhen) => write({ onlyWhen: onlyWhen.slice(0, 6) })}
        />
      )}
    </Row>
  );
}
