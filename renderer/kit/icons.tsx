import { keysOf } from '../../core/table.ts';

/** Our own icons: 24 grid, stroke 2, round ends, no fill. Always beside words, hence hidden from a screen reader. */
const PATHS = {
  mains: 'M9 3v5M15 3v5M6 8h12v3a6 6 0 0 1-12 0zM12 17v4',
  lead: 'M3 9h5v6H3zM16 9h5v6h-5zM8 12c3-6 5 6 8 0',
  lock: 'M5 11h14v9H5zM8 11V7.5a4 4 0 0 1 8 0V11M12 15v2',
  strap: 'M12 4a5.5 8 0 1 0 .01 0M17.5 13c3 0 3.5 3 3.5 7',
  hand: 'M4 12h16M14 6l6 6-6 6',
  heat: 'M4 20h16M8 16c-3-4 3-5 0-10M13 16c-3-4 3-5 0-10M18 16c-3-4 3-5 0-10',
  glass: 'M5 3h14v18H5zM9 8l4-3M8 14l8-6',
  leak: 'M12 3c4 5 6 8 6 11a6 6 0 0 1-12 0c0-3 2-6 6-11zM9 15a3 3 0 0 0 3 3',
  stop: 'M8 3h8l5 5v8l-5 5H8l-5-5V8zM8 12h8',
  data: 'M4 5h16v14H4zM4 10h16M8 15h.01M12 15h5',
  two: 'M8 5a2.5 2.5 0 1 0 .01 0M16 5a2.5 2.5 0 1 0 .01 0M4 20v-7h8v7M12 20v-7h8v7',
  edge: 'M4 20L14 4l6 3-8 13zM4 20h16',
  air: 'M3 9h11a3 3 0 1 0-3-3M3 13h15a3 3 0 1 1-3 3M3 17h7',
  find: 'M10.5 4a6.5 6.5 0 1 0 .01 0M15.5 15.5L21 21',
  photo: 'M3 7h5l2-3h4l2 3h5v13H3zM12 10a3.6 3.6 0 1 0 .01 0',
} as const;

export type IconName = keyof typeof PATHS;
export const ICON_NAMES = keysOf(PATHS);

export function Icon({ name, size = 24 }: { readonly name: IconName; readonly size?: number }) {
  return (
    <svg
      width={size}
      height={size}
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      <path d={PATHS[name]} />
    </svg>
  );
}
