import { TextField } from '../../kit/fields/TextField.tsx';
import { YesNo } from '../../kit/keys/YesNo.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { OneOf } from '../fields/OneOf.tsx';
import type { BeforeSheet } from './sheet.ts';

/** What is asked before the first screw: encryption and key, backup, purchase, warranty, seals. "Don't know" is treated as yes. */
export function BeforeFields({
  before,
  onChange,
}: {
  readonly before: BeforeSheet;
  readonly onChange: (before: BeforeSheet) => void;
}) {
  const { t } = useWords();
  const change = (patch: Partial<BeforeSheet>) => onChange({ ...before, ...patch });
  return (
    <div className="counter-stack">
      <OneOf
        asks={t('counter.before.encryption')}
        words="encryption"
        ids={['yes', 'no', 'unknown'] as const}
        chosen={before.encryption}
        onChoose={(encryption) => change({ encryption })}
      />
      {before.encryption !== null && before.encryption !== 'no' && (
        <>
          {before.encryption === 'unknown' && <p className="k-muted k-small">{t('counter.before.unknown-is-yes')}</p>}
          <YesNo
            asks={t('counter.before.key-in-hand')}
            answer={before.keyInHand === null ? null : before.keyInHand ? 'yes' : 'no'}
            onAnswer={(answer) => change({ keyInHand: answer === null ? null : answer === 'yes' })}
          />
          <TextField
            label={t('counter.before.key-place')}
            labelled="above"
            value={before.keyPlace}
            onChange={(keyPlace) => change({ keyPlace })}
          />
        </>
      )}
      <OneOf
        asks={t('counter.before.backup')}
        words="backup"
        ids={['yes', 'old', 'no', 'unknown'] as const}
        chosen={before.backup}
        onChoose={(backup) => change({ backup })}
      />
      <div className="counter-fields">
        <TextField
          label={t('counter.before.bought')}
          labelled="above"
          value={before.bought}
          onChange={(bought) => change({ bought })}
          chars={22}
        />
        <TextField
          label={t('counter.before.from')}
          labelled="above"
          value={before.from}
          onChange={(from) => change({ from })}
          chars={22}
        />
      </div>
      <OneOf
        asks={t('counter.before.warranty')}
        words="warranty"
        ids={['running', 'over', 'unknown'] as const}
        chosen={before.makersWarranty}
        onChoose={(makersWarranty) => change({ makersWarranty })}
      />
      <OneOf
        asks={t('counter.before.seals')}
        words="seals"
        ids={['none', 'whole', 'broken', 'unknown'] as const}
        chosen={before.seals}
        onChoose={(seals) => change({ seals })}
      />
    </div>
  );
}
