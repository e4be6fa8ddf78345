import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useSearchParams } from 'react-router';
import { Frame } from '../Frame.tsx';
import { Key } from '../kit/keys/Key.tsx';
import { OutList, WallDrawing } from '../kit/wall/WallDrawing.tsx';
import { useWords } from '../kit/words.tsx';
import { outRead, wallRead } from '../link/reads.ts';
import { KeptList } from './KeptList.tsx';
import { NewPart } from './NewPart.tsx';
import { OrderList } from './OrderList.tsx';
import { PartDeeds } from './PartDeeds.tsx';
import { outParts, wallRows } from './wallRows.ts';
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
  const [adding, setAdding] = useState(false);
  const out = useQuery(outRead()).data ?? [];
  const parts = wall.data?.parts ?? [];
  const rows = wallRows(parts, words);
  const chosen = parts.find((part) => part.id === chosenId) ?? null;
  const choose = (id: string | null) => {
    setChosenId(id);
    setDeed(null);
    setScannedId(null);
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
    >
      <div className="wall-room">
        <div className="wall-side">
          <OutList
            title={t('wall.out')}
            parts={outParts(out, words)}
            onChoose={(tag) => choose(parts.find((part) => part.tag === tag)?.id ?? null)}
          />
          {out.length === 0 && <p>{t('wall.nothing-out')}</p>}
          <OrderList />
          <KeptList />
          {chosen ? (
            <PartDeeds
              key={chosen.id}
              part={chosen}
              parts={parts}
              deed={deed}
              onDeed={setDeed}
              scanned={parts.find((part) => part.id === scannedId) ?? null}
            />
          ) : (
            <p>{t('wall.choose')}</p>
          )}
          <Key wide onPress={() => setAdding(!adding)}>
            {t('wall.add')}
          </Key>
          {adding && <NewPart onDone={() => setAdding(false)} />}
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
