import type { WallSheet } from '../../core/contract/screens.ts';
import type { Place } from '../../core/custody/place.ts';
import { ChoiceKeys } from '../kit/keys/ChoiceKeys.tsx';
import { Problem } from '../kit/keys/Problem.tsx';
import { TagText } from '../kit/mark/TagText.tsx';
import { useWords } from '../kit/text/words.tsx';
import { useExecute } from '../link/useExecute.ts';
import { FactsForm } from '../parts/FactsForm.tsx';
import { ArrivedKeys, SendForm } from '../parts/SendForm.tsx';
import { type WallPart, whereWords } from '../terms/wallRows.ts';
import { HoldPart } from './deeds/HoldPart.tsx';
import { JoinPart } from './deeds/JoinPart.tsx';
import { LendPart } from './deeds/LendPart.tsx';
import { MovePart } from './deeds/MovePart.tsx';
import { ProvePart } from './deeds/ProvePart.tsx';
import { SellPart } from './deeds/SellPart.tsx';
import { MachineInside } from './MachineInside.tsx';
import { PartPath } from './PartPath.tsx';
import { partDeeds } from './partDeeds.ts';
import { standingInFull } from './standingInFull.ts';
import { NewTag } from './tags/NewTag.tsx';
import { useTagFile } from './tags/useTagFile.ts';

type PartDeedsProps = {
  readonly part: WallPart;
  readonly parts: WallSheet['parts'];
  readonly rigs: WallSheet['rigs'];
  /** The deed whose fields are open. */
  readonly deed: string | null;
  readonly onDeed: (deed: string | null) => void;
  /** A part whose tag was scanned while this one is chosen: what it is to move with. */
  readonly scanned: WallPart | null;
  /** A tag that hangs on nothing yet, as typed or scanned. */
  readonly tag: string;
  readonly onTag: (tag: string) => void;
};

/** What can be done with the part chosen, each by key, touch or scan; where it is, how good it is, and its whole path. */
export function PartDeeds({ part, parts, rigs, deed: open, onDeed, scanned, tag, onTag }: PartDeedsProps) {
  const words = useWords();
  const { t } = words;
  const { execute, problem } = useExecute();
  const { print, failed } = useTagFile();
  const { id, place, home } = part;
  const moveTo = (to: Place) => execute('moveShopPart', { part: id, from: place, to, says: null });
  /** What is done at once; the others open a few fields. */
  const atOnce: Readonly<Record<string, () => Promise<unknown>>> = {
    failed: () =>
      execute('provePart', { part: id, where: t('wall.rig'), scopes: [], works: false, how: t('wall.failed-on-rig') }),
    home: async () => home && moveTo(home),
    'take-back': async () => home && execute('takeBackLent', { part: id, from: place, to: home }),
    split: async () => {
      const to = parts.find((one) => place.at === 'with' && one.id === place.part)?.place;
      return to && moveTo(to);
    },
    release: async () => part.reservedFor && execute('releasePart', { part: id, job: part.reservedFor }),
    'print-tag': async () => part.tag && print({ is: 'these', tags: [part.tag] }),
    'void-tag': async () => part.tag && execute('voidTag', { tag: part.tag, on: { is: 'part', part: id } }),
    recycle: () => moveTo({ at: 'gone', why: 'recycled' }),
  };
  const offered = partDeeds(part, parts);
  const now = offered.find((deed) => deed === open) ?? null;
  return (
    <section className="wall-deeds" aria-label={part.name}>
      {part.tag && <TagText tag={part.tag} shop />}
      <p>
        <b>{part.name}</b>
        <br />
        {standingInFull(part, words)}
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
      {now === 'proved' && <ProvePart part={part} onDone={() => onDeed(null)} />}
      {now === 'lend' && <LendPart part={part} />}
      {now === 'hold' && <HoldPart part={part} onDone={() => onDeed(null)} />}
      {now === 'join' && <JoinPart part={part} parts={parts} scanned={scanned} />}
      {now === 'move' && <MovePart part={part} rigs={rigs} />}
      {now === 'sell' && <SellPart part={part} />}
      {now === 'facts' && <FactsForm part={part} job={null} onDone={() => onDeed(null)} />}
      {now === 'send' && <SendForm part={part.name} onSend={(to) => void moveTo(to)} />}
      {now === 'arrived' && place.at === 'transit' && <ArrivedKeys to={place.to} onArrived={(to) => void moveTo(to)} />}
      {now === 'new-tag' && <NewTag part={part} tag={tag} onTag={onTag} onDone={() => onDeed(null)} />}
      {failed && <Problem slim {...failed} />}
      {problem && <Problem slim {...problem} />}
      {place.at === 'slot' && <MachineInside machine={place.machine} />}
      <PartPath part={id} />
    </section>
  );
}
