import type { WallSheet } from '../../core/contract/screens.ts';
import { ChoiceKeys } from '../kit/keys/ChoiceKeys.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { TagText } from '../kit/mark/TagText.tsx';
import { useWords } from '../kit/words.tsx';
import { useDoes } from '../link/does.ts';
import { JoinPart } from './deeds/JoinPart.tsx';
import { LendPart } from './deeds/LendPart.tsx';
import { MovePart } from './deeds/MovePart.tsx';
import { SellPart } from './deeds/SellPart.tsx';
import { deedsOf } from './deedsOf.ts';
import { MachineInside } from './MachineInside.tsx';
import { PartPath } from './PartPath.tsx';
import { standingWords, type WallPart, whereWords } from './wallRows.ts';

type PartDeedsProps = {
  readonly part: WallPart;
  readonly parts: WallSheet['parts'];
  /** The deed whose fields are open. */
  readonly deed: string | null;
  readonly onDeed: (deed: string | null) => void;
  /** A part whose tag was scanned while this one is chosen: what it is to move with. */
  readonly scanned: WallPart | null;
};

/** What can be done with the part chosen, each by key, touch or scan; where it is, how good it is, and its whole path. */
export function PartDeeds({ part, parts, deed: open, onDeed, scanned }: PartDeedsProps) {
  const words = useWords();
  const { t } = words;
  const { does, problem } = useDoes();
  const { id, place, home } = part;
  const prove = (works: boolean) =>
    does('provePart', {
      part: id,
      where: t('wall.rig'),
      scopes: works ? ['starts'] : [],
      works,
      how: works ? null : t('wall.failed-on-rig'),
    });
  /** What is done at once; the others open a few fields. */
  const atOnce: Readonly<Record<string, () => Promise<unknown>>> = {
    proved: () => prove(true),
    failed: () => prove(false),
    home: async () => home && does('moveShopPart', { part: id, from: place, to: home, says: null }),
    'take-back': async () => home && does('takeBackLent', { part: id, from: place, to: home }),
    split: async () => {
      const to = parts.find((one) => place.at === 'with' && one.id === place.part)?.place;
      return to && does('moveShopPart', { part: id, from: place, to, says: null });
    },
    release: async () => part.reservedFor && does('releasePart', { part: id, job: part.reservedFor }),
    'new-tag': () => does('tagPart', { part: id, tag: null }),
    recycle: () => does('moveShopPart', { part: id, from: place, to: { at: 'gone', why: 'recycled' }, says: null }),
  };
  const offered = deedsOf(part, parts);
  const now = open !== null && offered.includes(open) ? open : null;
  return (
    <section className="wall-deeds" aria-label={part.name}>
      {part.tag && <TagText tag={part.tag} shop />}
      <p>
        <b>{part.name}</b>
        <br />
        {standingWords(part, words)}
        <br />
        {whereWords(part, words)}
        {part.overdue && <b> {t('wall.overdue')}</b>}
      </p>
      <ChoiceKeys
        label={t('wall.what-now', { name: part.name })}
        mode="one"
        choices={offered.map((deed) => ({ id: deed, says: t(`wall.do.${deed}`) }))}
        chosen={now === null ? [] : [now]}
        onChoose={([deed]) => {
          const done = deed === undefined ? undefined : atOnce[deed];
          onDeed(done || deed === undefined ? null : deed);
          void done?.();
        }}
      />
      {now === 'lend' && <LendPart part={part} />}
      {now === 'join' && <JoinPart part={part} parts={parts} scanned={scanned} />}
      {now === 'move' && <MovePart part={part} />}
      {now === 'sell' && <SellPart part={part} />}
      {problem && <Problem slim {...problem} />}
      {place.at === 'slot' && <MachineInside machine={place.machine} />}
      <PartPath part={id} />
    </section>
  );
}
