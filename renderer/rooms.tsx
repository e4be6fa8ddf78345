import type { ReactNode } from 'react';
import type { RouteObject } from 'react-router';
import { BenchRoom } from './bench/BenchRoom.tsx';
import { CounterRoom } from './counter/CounterRoom.tsx';
import { DayLineRoom } from './day-line/DayLineRoom.tsx';
import { Contained } from './kit/shell/Contained.tsx';
import { RoomFailed } from './RoomFailed.tsx';
import { ReckoningRoom } from './reckoning/ReckoningRoom.tsx';
import { ROOM_PATHS } from './roomLinks.ts';
import { WallRoom } from './wall/WallRoom.tsx';

/** A room that fails is said in its place, and takes no other with it. */
const room = (here: keyof typeof ROOM_PATHS, element: ReactNode, below = '') => ({
  path: `${ROOM_PATHS[here]}${below}`,
  element: (
    <Contained key={`${here}${below}`} fallback={(again) => <RoomFailed here={here} onAgain={again} />}>
      {element}
    </Contained>
  ),
});

/** What stands at each room's path, and at that of one job in it. A new room is a folder, a path and a line here. */
export const ROUTES: readonly RouteObject[] = [
  room('day-line', <DayLineRoom />),
  room('counter', <CounterRoom />),
  room('counter', <CounterRoom />, '/:job'),
  room('bench', <BenchRoom />),
  room('bench', <BenchRoom />, '/:job'),
  room('wall', <WallRoom />),
  room('reckoning', <ReckoningRoom />),
];
