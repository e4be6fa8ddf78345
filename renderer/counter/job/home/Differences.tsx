import type { CommandRequest } from '../../../../core/commands/asked.ts';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../../kit/text/words.tsx';

const WHAT = ['settings-cleared', 'tie-cut', 'died-here', 'hours-more', 'plugs-out-and-in', 'other'] as const;
type What = (typeof WHAT)[number];

export type DifferenceSheet = {
  readonly chosen: readonly What[];
  readonly says: { readonly [what in What]?: string };
};

export const differencesInput = ({
  chosen,
  says,
}: DifferenceSheet): CommandRequest<'handOver'>['input']['differences'] =>
  chosen.map((what) => ({ what, says: says[what]?.trim() || null }));

/** What is not as it came: named, each with a word. */
export function Differences({
  value,
  onChange,
}: {
  readonly value: DifferenceSheet;
  readonly onChange: (value: DifferenceSheet) => void;
}) {
  const { t } = useWords();
  return (
    <>
      <ChoiceKeys
        label={t('counter.job.rows.differences')}
        choices={WHAT.map((id) => ({ id, says: t(`counter.differences.${id}`) }))}
        chosen={value.chosen}
        onChoose={(ids) => onChange({ ...value, chosen: WHAT.filter((what) => ids.includes(what)) })}
      />
      {value.chosen.map((what) => (
        <TextField
          key={what}
          label={t('counter.differences.more', { what: t(`counter.differences.${what}`) })}
          labelled="above"
          value={value.says[what] ?? ''}
          onChange={(text) => onChange({ ...value, says: { ...value.says, [what]: text } })}
        />
      ))}
    </>
  );
}
