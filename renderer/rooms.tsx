import type { RouteObject } from 'react-router';
import { BenchRoom } from './bench/BenchRoom.tsx';
import { CounterRoom } from './counter/CounterRoom.tsx';
import { DayLineRoom } from './day-line/DayLineRoom.tsx';
import { ReckoningRoom } from './reckoning/ReckoningRoom.tsx';
import { ROOM_PATHS } from './roomLinks.ts';
import { WallRoom } from './wall/WallRoom.tsx';

/** What stands at each room's path, and at that of one job in it. A new room is a folder, a path and a line here. */
export const ROUTES: readonly RouteObject[] = [
  { path: ROOM_PATHS['day-line'], element: <DayLineRoom /> },
  { path: ROOM_PATHS.counter, element: <CounterRoom /> },
  { path: `${ROOM_PATHS.counter}/:job`, element: <CounterRoom /> },
  { path: ROOM_PATHS.bench, element: <BenchRoom /> },
  { path: `${ROOM_PATHS.bench}/:job`, element: <BenchRoom /> },
  { path: ROOM_PATHS.wall, element: <WallRoom /> },
  { path: ROOM_PATHS.reckoning, element: <ReckoningRoom /> },
];
