import { useState } from 'react';
import { SCOPES, type Scope } from '../../../core/custody/part.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import type { WallPart } from '../../terms/wallRows.ts';

/** A part was shown to work: where, and how far. From then on it is known-good, until that lapses. */
export function ProvePart({ part, onDone }: { readonly part: WallPart; readonly onDone: () => void }) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [where, setWhere] = useState(t('wall.rig'));
  const [scopes, setScopes] = useState<readonly Scope[]>(['starts']);
  const ready = where.trim() !== '' && scopes.length > 0;
  const prove = async () => {
    const asked = { part: part.id, where: where.trim(), scopes: [...scopes], works: true, how: null };
    if (await execute('provePart', asked)) onDone();
  };
  return (
    <>
      <TextField label={t('wall.prove.where')} labelled="above" value={where} onChange={setWhere} />
      <ChoiceKeys
        label={t('wall.prove.scopes')}
        labelled="above"
        choices={SCOPES.map((id) => ({ id, says: t(`wall.scope.${id}`) }))}
        chosen={scopes}
        onChoose={(ids) => setScopes(SCOPES.filter((one) => ids.includes(one)))}
      />
      <Key wide onPress={() => void prove()} {...(ready ? {} : { whyNot: t('wall.prove.needs') })}>
        {t('wall.prove.do')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
