import { whoMayCollect } from '../../../../core/approval/mayAnswer.ts';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import type { OfJob } from '../sheetOf.ts';

/** Who fetches it: the owner, or one the owner named; the name as it stands on the record. */
export function CollectedBy({
  sheet,
  name,
  onName,
}: Pick<OfJob, 'sheet'> & { readonly name: string; readonly onName: (name: string) => void }) {
  const { t } = useWords();
  const may = whoMayCollect(sheet.owner);
  return (
    <>
      <ChoiceKeys
        label={t('counter.home.may-collect')}
        mode="one"
        choices={may.map((one) => ({ id: one, says: one }))}
        chosen={may.includes(name) ? [name] : []}
        onChoose={([chosen]) => onName(chosen ?? '')}
      />
      <TextField label={t('counter.home.collected-by')} labelled="above" value={name} onChange={onName} chars={26} />
    </>
  );
}
