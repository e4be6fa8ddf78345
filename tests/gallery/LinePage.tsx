import { useState } from 'react';
import { FindField } from '../../renderer/kit/fields/FindField.tsx';
import { Key } from '../../renderer/kit/keys/Key.tsx';
import { type DayJob, DayLine, type DayOpening, DaySentence } from '../../renderer/kit/line/DayLine.tsx';
import { RoomShell } from '../../renderer/kit/shell/RoomShell.tsx';
import { aTag } from '../builders/aTag.ts';
import { ROOMS } from './rooms.ts';

const HOUR = 3_600_000;
const NINE = Date.UTC(2026, 9, 13, 8);
const DAYS: readonly DayOpening[] = [0, 1, 2, 3, 7, 8].map((day) => ({
  opens: NINE + day * 24 * HOUR,
  closes: NINE + day * 24 * HOUR + 9 * HOUR,
}));
const job = (id: string, band: DayJob['band'], day: number, hour: number, second: string, late?: number): DayJob => ({
  id,
  name: id,
  second,
  band,
  promised: NINE + (day * 24 + hour) * HOUR,
  ninety: late === undefined ? null : NINE + late * HOUR,
});
const JOBS: readonly DayJob[] = [
  job('Chart room', 'ours', 3, 2, 'tracing, our processor is next'),
  job('Lantern press', 'ours', 0, 4, 'memory pass till 11:30'),
  job('Choir office', 'ours', 0, 8, 'promised 17:00, nine in ten by Wed 11:00', 26),
  job('Bike couriers', 'ours', 2, 3, 'tracing, has the card'),
  job('Seed merchant', 'ours', 7, 1, 'a new drive goes in'),
  job('Allotment club', 'owners', 1, 3, 'lesser board offered, asked Mon 15:10'),
  job('Translator', 'owners', 2, 3, 'tried three times, lapses Thu 12:00'),
  job('Sign painter', 'suppliers', 7, 3, 'supply on the way, due Fri or Tue'),
  job('Museum shop', 'ready', -1, 3, 'ready since Mon, reminded twice'),
  job('Night school', 'ready', 0, 8.2, 'called, comes at 17:10'),
];
const MANY: readonly DayJob[] = Array.from({ length: 30 }, (_, i) =>
  job(`Job ${i + 1}`, 'ours', 1 + (i % 4), i % 8, 'in tracing'),
);

export function LinePage() {
  const [chosen, setChosen] = useState<string | null>('Chart room');
  const [find, setFind] = useState('');
  const jobs = new URLSearchParams(location.search).has('many') ? [...JOBS, ...MANY] : JOBS;
  return (
    <RoomShell
      rooms={ROOMS}
      here="line"
      open={<h1>Tuesday 13 October</h1>}
      find={
        <FindField
          label="Find"
          hint="owner, tag, part, paper"
          value={find}
          onChange={setFind}
          hits={[]}
          onChoose={() => {}}
          nothing="Nothing is called that here."
        />
      }
      foot={
        <DaySentence
          who={chosen ?? ''}
          says="It is not the memory and not the graphics card. Today we try a processor of ours. You hear from us by four tomorrow."
        >
          <Key kind="filled" large>
            Open at Tracing
          </Key>
        </DaySentence>
      }
    >
      <DayLine
        now={NINE + 1.7 * HOUR}
        days={DAYS}
        jobs={jobs}
        threads={[
          {
            waits: 'Choir office',
            has: 'Bike couriers',
            tag: aTag('5RDPX7X'),
            what: 'card',
            says: 'waits for our card',
          },
        ]}
        notes={{ ours: '6 h 10 of hands' }}
        chosen={chosen}
        onChoose={setChosen}
        onOpen={() => {}}
      />
    </RoomShell>
  );
}
