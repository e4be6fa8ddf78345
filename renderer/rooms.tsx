import type { RouteObject } from 'react-router';
import { BenchRoom } from './bench/BenchRoom.tsx';
import { CounterRoom } from './counter/CounterRoom.tsx';
import { DayLineRoom } from './day-line/DayLineRoom.tsx';
import { WallRoom } from './wall/WallRoom.tsx';

/** The one list of rooms: where each is reached and what stands there. A new room is a folder and a line here. */
export const ROOMS = [
  { id: 'day-line', path: '/', routes: [{ index: true, element: <DayLineRoom /> }] },
  {
    id: 'counter',
    path: '/counter',
    routes: [
      { path: 'counter', element: <CounterRoom /> },
      { path: 'counter/:job', element: <CounterRoom /> },
    ],
  },
  {
    id: 'bench',
    path: '/bench',
    routes: [
      { path: 'bench', element: <BenchRoom /> },
      { path: 'bench/:job', element: <BenchRoom /> },
    ],
  },
  { id: 'wall', path: '/wall', routes: [{ path: 'wall', element: <WallRoom /> }] },
] as const satisfies readonly { readonly id: string; readonly path: string; readonly routes: readonly RouteObject[] }[];
