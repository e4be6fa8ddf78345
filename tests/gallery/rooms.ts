import type { RoomLink } from '../../renderer/kit/shell/RoomShell.tsx';

export const ROOMS: readonly RoomLink[] = [
  { id: 'line', name: 'Day line', href: '?show=line' },
  { id: 'counter', name: 'Counter', href: '?show=keys' },
  { id: 'bench', name: 'Bench', href: '?show=bench' },
  { id: 'wall', name: 'Wall', href: '?show=wall' },
  { id: 'kept', name: 'Kept', href: '?show=marks' },
  { id: 'reckoning', name: 'Reckoning', href: '?show=rules' },
];
