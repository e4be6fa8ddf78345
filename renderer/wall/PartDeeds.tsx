import type { WallSheet } from '../../core/contract/screens.ts';
import { Key } from '../kit/keys/Key.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { TagText } from '../kit/mark/TagText.tsx';
import { useWords } from '../kit/words.tsx';
import { useDoes } from '../link/does.ts';
import { standingWords, whereWords } from './wallRows.ts';

/** What can be done with the part chosen: prove, take back to its bin, give it a new tag, retire. */
export function PartDeeds({ part }: { readonly part: WallSheet['parts'][number] }) {
  const words = useWords();
  const { t } = words;
  const { does, problem } = useDoes();
  const home = part.home;
  const inside = part.place.at === 'slot';
  return (
    <section className="wall-deeds" aria-label={part.name}>
      {part.tag && <TagText tag={part.tag} shop />}
      <p>
        <b>{part.name}</b>
        <br />
        {standingWords(part.standing, words)}
        <br />
        {part.place.at === 'bin' ? t('wall.in-bin', { bin: part.place.bin }) : whereWords(part, words)}
      </p>
      <Key
        wide
        onPress={() =>
          void does('provePart', { part: part.id, where: t('wall.rig'), scopes: ['starts'], works: true, how: null })
        }
      >
        {t('wall.prove')}
      </Key>
      <Key
        wide
        onPress={() =>
          void does('provePart', {
            part: part.id,
            where: t('wall.rig'),
            scopes: [],
            works: false,
            how: t('wall.failed-on-rig'),
          })
        }
      >
        {t('wall.failed')}
      </Key>
      {home && part.place.at !== 'bin' && (
        <Key
          wide
          {...(inside ? { whyNot: t('wall.take-out-on-bench') } : {})}
          onPress={() => void does('moveShopPart', { part: part.id, from: part.place, to: home, says: null })}
        >
          {t('wall.back')}
        </Key>
      )}
      <Key wide onPress={() => void does('tagPart', { part: part.id, tag: null })}>
        {t('wall.new-tag')}
      </Key>
      {part.place.at === 'bin' && (
        <Key
          wide
          onPress={() =>
            void does('moveShopPart', {
              part: part.id,
              from: part.place,
              to: { at: 'gone', why: 'recycled' },
              says: null,
            })
          }
        >
          {t('wall.retire')}
        </Key>
      )}
      {problem && <Problem slim {...problem} />}
    </section>
  );
}
