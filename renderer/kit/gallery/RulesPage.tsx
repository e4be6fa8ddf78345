import { ICON_NAMES, Icon } from '../icons.tsx';
import { Rule } from '../rule/Rule.tsx';
import { RoomShell } from '../shell/RoomShell.tsx';
import { ROOMS } from './rooms.ts';

export function RulesPage() {
  return (
    <RoomShell rooms={ROOMS} here="reckoning" open={<h1>Rulers</h1>}>
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
