import { useState } from 'react';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/words.tsx';
import { useDoes } from '../../link/does.ts';
import type { WallPart } from '../wallRows.ts';

/** Into another bin, which is its own from then on; with a reason where an earlier entry is righted. */
export function MovePart({ part }: { readonly part: WallPart }) {
  const { t } = useWords();
  const { does, problem } = useDoes();
  const [bin, setBin] = useState('');
  const [says, setSays] = useState('');
  return (
    <>
      <TextField label={t('wall.move.bin')} labelled="above" value={bin} onChange={setBin} />
      <TextField label={t('wall.move.says')} labelled="above" value={says} onChange={setSays} />
      <Key
        wide
        onPress={() =>
          void does('moveShopPart', {
            part: part.id,
            from: part.place,
            to: { at: 'bin', bin: bin.trim() },
            says: says.trim() || null,
          })
        }
        {...(bin.trim() ? {} : { whyNot: t('wall.move.needs') })}
      >
        {t('wall.move.do')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
