import { ICON_NAMES, Icon } from '../../renderer/kit/icons.tsx';
import { CalibrationPlot } from '../../renderer/kit/plot/CalibrationPlot.tsx';
import { IntervalRows } from '../../renderer/kit/plot/IntervalRows.tsx';
import { PlotLegend } from '../../renderer/kit/plot/PlotLegend.tsx';
import { Rule } from '../../renderer/kit/plot/Rule.tsx';
import { RoomShell } from '../../renderer/kit/shell/RoomShell.tsx';
import { ROOMS } from './rooms.ts';

export function RulesPage() {
  return (
    <RoomShell rooms={ROOMS} here="reckoning" open={<h1>Rulers</h1>}>
      <div style={{ display: 'grid', gridTemplateColumns: '520px minmax(0, 1fr)', gap: 28, padding: 32 }}>
        <CalibrationPlot
          caption="Said against done"
          along="jobs in 100 that we said would be done by then"
          up="jobs in 100 that were done"
          onDots="on the dots: as promised"
          points={[
            { said: 10, done: 7, low: 2, high: 19, counts: '3 of 41' },
            { said: 25, done: 20, low: 10, high: 34, counts: '8 of 41' },
            { said: 50, done: 41, low: 28, high: 57, counts: '17 of 41' },
            { said: 75, done: 66, low: 51, high: 78, counts: '27 of 41' },
            { said: 90, done: 83, low: 69, high: 91, counts: '34 of 41' },
          ]}
        />
        <IntervalRows
          caption="Families of failures"
          heads={['Family', 'Share', 'all others', 'Counts', 'Verdict']}
          unit="in 100 seen here"
          onChoose={() => {}}
          rows={[
            {
              id: 'a',
              name: 'Oakrill 2 TB drive',
              second: 'read errors',
              here: 60,
              low: 36,
              high: 80,
              others: 14,
              counts: '9 of 15',
              verdict: 'more than other drives',
              bold: true,
            },
            {
              id: 'b',
              name: 'Marrable 550 supply',
              second: 'late start signal',
              here: 27,
              low: 10,
              high: 57,
              others: 13,
              counts: '3 of 11',
              verdict: 'too few to say',
              bold: false,
            },
          ]}
          legend={
            <PlotLegend
              point="confirmed here"
              diamond="all others of the kind"
              whisker="where 19 in 20 such ranges hold the truth"
            />
          }
        />
      </div>
      <div style={{ padding: 32, display: 'grid', gap: 28, justifyItems: 'start' }}>
        <Rule
          label="Cost in pounds"
          from={0}
          to={300}
          length={344}
          ranges={[
            { from: 75, to: 150, kind: 'thick', says: 'likely 75 to 150' },
            { from: 150, to: 210, kind: 'dots', says: 'nine in ten under 210' },
          ]}
          limit={{ at: 180, label: 'limit', says: 'the limit is 180' }}
        />
        <Rule
          label="12 V rail"
          from={11}
          to={13}
          length={560}
          ranges={[{ from: 11.4, to: 12.6, kind: 'bracket', says: 'allowed: 11.40 to 12.60 V', shown: true }]}
          marks={[{ at: 12.11, kind: 'point', says: 'yours 12.11' }]}
        />
        <Rule
          label="Failed, in 100 seen here"
          from={0}
          to={100}
          length={280}
          ranges={[{ from: 36, to: 80, kind: 'whisker', says: '36 to 80 in 100' }]}
          marks={[
            { at: 60, kind: 'point', says: '9 of 15' },
            { at: 14, kind: 'diamond', says: 'all others 14' },
          ]}
        />
        <div style={{ display: 'flex', gap: 18 }}>
          {ICON_NAMES.map((name) => (
            <Icon key={name} name={name} size={32} />
          ))}
        </div>
      </div>
    </RoomShell>
  );
}
