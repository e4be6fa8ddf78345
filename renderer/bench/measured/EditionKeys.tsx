import { EDITIONS } from '../../../core/tracing/live/readings/editions.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../kit/text/words.tsx';

export type EditionKeysProps = {
  readonly edition: string | null;
  readonly onEdition: (edition: string | null) => void;
};

/** Which edition the supply was made to; none pressed is "not known". */
export function EditionKeys({ edition, onEdition }: EditionKeysProps) {
  const { t } = useWords();
  return (
    <div>
      <p className="k-small">{t('measured.edition')}</p>
      <ChoiceKeys
        label={t('measured.edition')}
        mode="one"
        choices={[
          ...EDITIONS.map(({ id, name }) => ({ id, says: name })),
          { id: '', says: t('measured.edition-unknown') },
        ]}
        chosen={[edition ?? '']}
        onChoose={([id]) => onEdition(id === undefined || id === '' ? null : id)}
      />
    </div>
  );
}
