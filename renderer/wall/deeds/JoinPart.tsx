import { useState } from 'react';
import type { PartId } from '../../../core/ids.ts';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import type { WallPart } from '../../terms/wallRows.ts';

/** Moves with another part as one from now on: a lead with its supply. The other is chosen, or its tag scanned. */
export function JoinPart({
  part,
  parts,
  scanned,
}: {
  readonly part: WallPart;
  readonly parts: readonly WallPart[];
  readonly scanned: WallPart | null;
}) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [chosen, setChosen] = useState<PartId | null>(null);
  const others = parts.filter((one) => one.id !== part.id && JSON.stringify(one.place) === JSON.stringify(part.place));
  const all = scanned && !others.some((one) => one.id === scanned.id) ? [...others, scanned] : others;
  const carrier = chosen ?? scanned?.id ?? null;
  return (
    <>
      <p>{t('wall.join.how')}</p>
      {all.length > 0 && (
        <ChoiceKeys
          label={t('wall.join.with')}
          mode="one"
          choices={all.map((one) => ({ id: one.id, says: one.name }))}
          chosen={carrier === null ? [] : [carrier]}
          onChoose={([id]) => setChosen(all.find((one) => one.id === id)?.id ?? null)}
        />
      )}
      <Key
        wide
        onPress={() =>
          carrier &&
          void execute('moveShopPart', {
            part: part.id,
            from: part.place,
            to: { at: 'with', part: carrier },
            says: null,
          })
        }
        {...(carrier === null ? { whyNot: t('wall.join.needs') } : {})}
      >
        {t('wall.join.do')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
