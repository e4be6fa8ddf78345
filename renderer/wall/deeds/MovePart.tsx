import { useState } from 'react';
import type { WallSheet } from '../../../core/contract/screens.ts';
import type { Place } from '../../../core/custody/place.ts';
import { takesKind } from '../../../core/custody/slot.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { ChoiceKeys } from '../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import type { WallPart } from '../../terms/wallRows.ts';

type MovePartProps = { readonly part: WallPart; readonly rigs: WallSheet['rigs'] };

/** Free places in rigs of ours for a part of this kind. */
const rigPlaces = ({ kind }: WallPart, rigs: WallSheet['rigs']) =>
  rigs.flatMap((rig) =>
    rig.slots
      .filter(({ id, takes }) => takesKind(takes, kind) && rig.inside[id] === undefined)
      .map(({ id }) => ({
        id: `${rig.id}/${id}`,
        called: rig.called,
        place: { at: 'rig', rig: rig.id, slot: id } as const,
      })),
  );

/** Into another bin, which is its own from then on, or into a rig; with a reason where an earlier entry is righted. */
export function MovePart({ part, rigs }: MovePartProps) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [bin, setBin] = useState('');
  const [says, setSays] = useState('');
  const places = rigPlaces(part, rigs);
  const moveTo = (to: Place) =>
    void execute('moveShopPart', { part: part.id, from: part.place, to, says: says.trim() || null });
  return (
    <>
      <TextField label={t('wall.move.bin')} labelled="above" value={bin} onChange={setBin} />
      <TextField label={t('wall.move.says')} labelled="above" value={says} onChange={setSays} />
      <Key
        wide
        onPress={() => moveTo({ at: 'bin', bin: bin.trim() })}
        {...(bin.trim() ? {} : { whyNot: t('wall.move.needs') })}
      >
        {t('wall.move.do')}
      </Key>
      {places.length > 0 && (
        <ChoiceKeys
          label={t('wall.move.rig')}
          labelled="above"
          mode="one"
          choices={places.map(({ id, called, place }) => ({
            id,
            says: t('wall.move.into', { rig: called, slot: place.slot }),
          }))}
          chosen={[]}
          onChoose={([id]) => {
            const chosen = places.find((one) => one.id === id);
            if (chosen) moveTo(chosen.place);
          }}
        />
      )}
      {problem && <Problem slim {...problem} />}
    </>
  );
}
