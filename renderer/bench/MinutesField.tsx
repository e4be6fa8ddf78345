import { NumberField } from '../kit/fields/NumberField.tsx';
import { useWords } from '../kit/text/words.tsx';

/** So many minutes of the bench. */
export function MinutesField(props: {
  readonly label: string;
  /** `null` when nothing is written. */
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
}) {
  const { t } = useWords();
  return <NumberField {...props} labelled="above" unit={t('bench.min')} least={0} />;
}
