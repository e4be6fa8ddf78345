import { RoomShell } from '../../renderer/kit/shell/RoomShell.tsx';
import { Reckoned } from '../../renderer/reckoning/Reckoned.tsx';
import { RECKONED } from './reckoningData.ts';
import { ROOMS } from './rooms.ts';

export function ReckoningPage() {
  return (
    <RoomShell rooms={ROOMS} here="reckoning" open={<h1>Reckoning</h1>}>
      <Reckoned sheet={RECKONED} />
    </RoomShell>
  );
}
