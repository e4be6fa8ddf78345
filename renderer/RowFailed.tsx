import { Key } from './kit/keys/Key.tsx';
import { Problem } from './kit/keys/Problem.tsx';
import { useWords } from './kit/text/words.tsx';

/** A line of a sheet that could not be shown; all others can be used. */
export function RowFailed({ onAgain }: { readonly onAgain: () => void }) {
  const { t } = useWords();
  return (
    <Problem slim says={t('app.failed.row')} unchanged={t('app.failed.unchanged')}>
      <Key kind="link" onPress={onAgain}>
        {t('app.failed.again')}
      </Key>
    </Problem>
  );
}
