import { useState } from 'react';
import { Key } from '../../renderer/kit/keys/Key.tsx';
import type { SilhouetteName } from '../../renderer/kit/mark/silhouettes.ts';
import { TagText } from '../../renderer/kit/mark/TagText.tsx';
import { OutList, type WallBin, WallDrawing } from '../../renderer/kit/mark/WallDrawing.tsx';
import { RoomShell } from '../../renderer/kit/shell/RoomShell.tsx';
import { aTag } from '../builders/aTag.ts';
import { ROOMS } from './rooms.ts';

const bin = (
  id: string,
  shape: SilhouetteName,
  tag: string,
  what: string,
  lines: readonly string[],
  out = false,
  bold = -1,
): WallBin => ({
  id,
  part: { tag: aTag(tag), what, shape, out, lines: lines.map((text, i) => ({ text, bold: i === bold })) },
});
const ROWS: readonly (readonly WallBin[])[] = [
  [
    bin('W1', 'card', 'RRH3A3R', 'card, no extra plug', ['in Bike couriers’', '3 days over'], true, 1),
    bin('W2', 'card', '5RDPX7X', 'card, 8-pin plug', ['known-good under load,', '22 Sep, Bram']),
    bin('W3', 'board', '9TH6WC7', 'board, LGA1200', ['known-good,', 'held for Chart room']),
    bin('W4', 'board', 'FTFM552', 'board, LGA1200', ['exposed to a supply,', 'prove on the rig, 5 min'], false, 0),
  ],
  [
    bin('W5', 'supply', 'M5P3A96', 'supply, 450 W', ['trial-grade,', 'use this one first']),
    bin('W6', 'supply', '5PY4R3K', 'supply, 650 W', ['known-good lapsed', '6 Oct, prove again'], false, 0),
    bin('W7', 'cooler', 'E9MTT2T', 'cooler, own screws', ['known-good under load,', '6 Oct, asked for']),
    bin('W8', 'tester', '6RKW6TD', 'load tester', ['out, bench 2,', 'since 9:20'], true),
  ],
  [
    bin('W9', 'dimm', 'E6HW345', 'DIMM 8 GB', ['in Chart room’s A2', 'since 15:12'], true),
    bin('W10', 'dimm', '5AWWR3K', 'DIMM 8 GB', ['DDR4, free,', 'trial-grade']),
    { id: 'W11', part: null },
    bin('W12', 'processor', '5MWH39J', 'processor', ['LGA1200,', 'trial-grade']),
    bin('W13', 'drive', '5HY9M7M', 'drive 240 GB', ['lent till', '20 Oct'], true),
    bin('W14', 'meter', 'P5FT24M', 'plug meter', ['read true', '6 Oct, free']),
  ],
];

export function WallPage() {
  const [chosen, setChosen] = useState<string | null>('W7');
  return (
    <RoomShell rooms={ROOMS} here="wall" open={<h1>Wall</h1>}>
      <div style={{ display: 'grid', gridTemplateColumns: '340px minmax(0, 1fr)', minHeight: '100%' }}>
        <div style={{ padding: '24px 0 24px 32px', display: 'flex', flexDirection: 'column' }}>
          <OutList
            title="Out, longest over first"
            onChoose={setChosen}
            parts={[
              {
                tag: aTag('RRH3A3R'),
                what: 'card',
                where: 'in Bike couriers’ since 17 Sep',
                bold: '3 days over. Choir office waits for it.',
              },
              { tag: aTag('6RKW6TD'), what: 'load tester', where: 'bench 2, since 9:20' },
              { tag: aTag('E6HW345'), what: 'DIMM', where: 'on trial in Chart room’s A2, since 15:12' },
            ]}
          />
          <div
            style={{
              marginTop: 'auto',
              display: 'grid',
              gap: 8,
              gridTemplateColumns: '1fr 1fr',
              borderTop: '2px solid var(--ink)',
              paddingTop: 12,
            }}
          >
            <div style={{ gridColumn: '1 / -1' }}>
              <TagText tag={aTag('E9MTT2T')} shop />
            </div>
            <div style={{ gridColumn: '1 / -1' }}>
              <Key kind="filled" wide>
                Take to Chart room
              </Key>
            </div>
            <Key wide>Prove</Key>
            <Key wide>Lend</Key>
            <Key wide>Print tag</Key>
            <Key wide>Retire</Key>
          </div>
        </div>
        <WallDrawing rows={ROWS} chosen={chosen} onChoose={setChosen} />
      </div>
    </RoomShell>
  );
}
