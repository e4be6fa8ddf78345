import { useState } from 'react';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { OneOf } from '../fields/OneOf.tsx';
import { Row } from './Row.tsx';
import { useTakingIn } from './sheetContext.tsx';

/** What gets left behind most: sticks, aerials and leads come first. */
const USUAL = ['mains-cord', 'picture-lead', 'stick', 'aerial', 'receiver', 'keyboard', 'mouse', 'disc'] as const;

/** What came along, with counts, and how many people lift the machine. */
export function CameAlongRow() {
  const { t } = useWords();
  const { sheet, write } = useTakingIn();
  const [other, setOther] = useState('');
  const things = sheet.cameAlong;
  const usual = USUAL.map((id) => ({ id: t(`counter.things.${id}`), says: t(`counter.things.${id}`) }));
  const added = things.filter(({ thing }) => !usual.some((one) => one.id === thing));
  const choices = [...usual, ...added.map(({ thing }) => ({ id: thing, says: thing }))];
  const add = () => {
    const thing = other.trim();
    if (thing === '' || things.some((one) => one.thing === thing)) return;
    write({ cameAlong: [...things, { thing, count: 1 }] });
    setOther('');
  };
  return (
    <Row id="came-along" known={things.length > 0 && sheet.lift !== null}>
      <ChoiceKeys
        label={t('counter.rows.came-along')}
        choices={choices}
        chosen={things.map((one) => one.thing)}
        onChoose={(ids) =>
          write({ cameAlong: ids.map((thing) => things.find((one) => one.thing === thing) ?? { thing, count: 1 }) })
        }
      />
      <form
        className="counter-fields"
        onSubmit={(event) => {
          event.preventDefault();
          add();
        }}
      >
        {things.map(({ thing, count }) => (
          <NumberField
            key={thing}
            label={t('counter.things.count', { thing })}
            labelled="above"
            value={count}
            least={1}
            most={99}
            chars={3}
            onChange={(now) =>
              write({ cameAlong: things.map((one) => (one.thing === thing ? { thing, count: now ?? 1 } : one)) })
            }
          />
        ))}
        <TextField label={t('counter.things.other')} labelled="above" value={other} onChange={setOther} chars={22} />
        <Key submit>{t('counter.things.add')}</Key>
      </form>
      <OneOf
        asks={t('counter.lift.asks')}
        words="lift"
        ids={['one', 'two'] as const}
        chosen={sheet.lift}
        onChoose={(lift) => write({ lift })}
      />
    </Row>
  );
}
