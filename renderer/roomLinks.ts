import type { RoomLink } from './kit/shell/RoomShell.tsx';
import type { Words } from './kit/text/words.tsx';

/** The one list of rooms, in the order of the frame's head, and where each is reached. */
export const ROOM_PATHS = {
  'day-line': '/',
  counter: '/counter',
  bench: '/bench',
  wall: '/wall',
  reckoning: '/reckoning',
} as const;

/** The rooms in words, for the frame's head. */
export const roomLinks = ({ named }: Pick<Words, 'named'>): readonly RoomLink[] =>
  Object.entries(ROOM_PATHS).map(([id, path]) => ({ id, name: named('app.rooms', id), href: `#${path}` }));
