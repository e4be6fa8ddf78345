import { parseTag } from '../../../core/custody/tag.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import type { WallPart } from '../../terms/wallRows.ts';

type NewTagProps = {
  readonly part: WallPart;
  /** As typed, or as scanned while this is open. */
  readonly tag: string;
  readonly onTag: (tag: string) => void;
  readonly onDone: () => void;
};

/** Another tag on a part: a printed one that is scanned or typed, or a fresh one. The old one is void from then on. */
export function NewTag({ part, tag, onTag, onDone }: NewTagProps) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const read = parseTag(tag);
  const hang = async (as: typeof read | null) => {
    if (as !== undefined && (await execute('tagPart', { part: part.id, tag: as }))) onDone();
  };
  return (
    <>
      <p>{t(part.tag ? 'wall.new-tag.how' : 'wall.new-tag.first')}</p>
      <TextField
        label={t('wall.new-tag.tag')}
        labelled="above"
        value={tag}
        onChange={onTag}
        wrong={tag !== '' && !read ? t('wall.tag-wrong') : undefined}
      />
      <Key wide onPress={() => void hang(read)} {...(read ? {} : { whyNot: t('wall.new-tag.needs') })}>
        {t('wall.new-tag.do')}
      </Key>
      <Key wide onPress={() => void hang(null)}>
        {t('wall.new-tag.fresh')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
