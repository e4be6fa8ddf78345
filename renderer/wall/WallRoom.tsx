import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useSearchParams } from 'react-router';
import { formatTag } from '../../core/custody/tag.ts';
import { Frame } from '../Frame.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { OutList, WallDrawing } from '../kit/mark/WallDrawing.tsx';
import { useWords } from '../kit/text/words.tsx';
import { outRead, shopRead, wallRead } from '../link/reads.ts';
import { outParts, wallRows } from '../terms/wallRows.ts';
import { KeptList } from './KeptList.tsx';
import { NewPartForm } from './NewPartForm';
import { OrderList } from './OrderList.tsx';
import { PartDeeds } from './PartDeeds.tsx';
import { NewRig } from './rigs/NewRig.tsx';
import { PrintTags } from './tags/PrintTags.tsx';
import './WallRoom.css';

/** The shop's parts where they lie: what is there, what is out and with whom, and what can be done with one. */
export function WallRoom() {
  const words = useWords();
  const { t } = words;
  const [params] = useSearchParams();
  const wall = useQuery(wallRead());
  const [chosenId, setChosenId] = useState<string | null>(params.get('part'));
  const [deed, setDeed] = useState<string | null>(null);
  const [scannedId, setScannedId] = useState<string | null>(null);
  const [opened, setOpened] = useState<'add' | 'tags' | 'rig' | null>(null);
  /** A tag that hangs on nothing yet, for what is being put up or tagged anew. */
  const [tag, setTag] = useState('');
  const { settings } = useQuery(shopRead()).data ?? {};
  const out = useQuery(outRead()).data ?? [];
  const parts = wall.data?.parts ?? [];
  const rows = wallRows(parts, words);
  const chosen = parts.find((part) => part.id === chosenId) ?? null;
  const choose = (id: string | null) => {
    setChosenId(id);
    act(null);
  };
  const act = (next: string | null) => {
    setDeed(next);
    setScannedId(null);
    setOpened(null);
    setTag('');
  };
  const unfold = (what: typeof opened) => {
    act(null);
    setOpened(what === opened ? null : what);
  };
  const binOf = (bin: string) => rows.flat().find((one) => one.id === bin)?.partId ?? null;
  return (
    <Frame
      here="wall"
      open={<h1>{t('app.rooms.wall')}</h1>}
      onScan={(found) => {
        if (found.is !== 'part' || !parts.some((part) => part.id === found.id)) return false;
        // While two are being joined, a scan names the other one; else it chooses.
        if (deed === 'join' && found.id !== chosenId) setScannedId(found.id);
        else choose(found.id);
        return true;
      }}
      onFreshTag={(fresh) => {
        if (opened !== 'add' && deed !== 'new-tag') return false;
        setTag(formatTag(fresh));
        return true;
      }}
    >
      <div className="wall-room">
        <div className="wall-side">
          <OutList
            title={t('wall.out')}
            parts={outParts(out, words)}
            onChoose={(tag) => choose((tag && parts.find((part) => part.tag === tag)?.id) ?? null)}
          />
          {out.length === 0 && <p>{t('wall.nothing-out')}</p>}
          <OrderList />
          <KeptList />
          {chosen ? (
            <PartDeeds
              key={chosen.id}
              part={chosen}
              parts={parts}
              rigs={wall.data?.rigs ?? []}
              deed={deed}
              onDeed={act}
              tag={tag}
              onTag={setTag}
              scanned={parts.find((part) => part.id === scannedId) ?? null}
            />
          ) : (
            <p>{t('wall.choose')}</p>
          )}
          <Key wide onPress={() => unfold('add')}>
            {t('wall.add')}
          </Key>
          {opened === 'add' && <NewPartForm tag={tag} onTag={setTag} onDone={() => unfold(null)} />}
          <Key wide onPress={() => unfold('tags')}>
            {t('wall.tags.title')}
          </Key>
          {opened === 'tags' && settings && <PrintTags settings={settings} />}
          <Key wide onPress={() => unfold('rig')}>
            {t('wall.rigs.new')}
          </Key>
          {opened === 'rig' && <NewRig onDone={() => unfold(null)} />}
        </div>
        {wall.isPending ? (
          <p role="status">{t('app.waiting')}</p>
        ) : (
          <WallDrawing
            rows={rows}
            chosen={rows.flat().find((bin) => bin.partId === chosenId)?.id ?? null}
            onChoose={(bin) => choose(binOf(bin))}
          />
        )}
      </div>
    </Frame>
  );
}
