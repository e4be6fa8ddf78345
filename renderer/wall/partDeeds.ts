import type { IdOf } from '../catalogue.ts';
import type { WallPart } from '../terms/wallRows.ts';

type WallDeed = IdOf<'wall.do'>;

/** What can be done with a part of ours as it stands; what cannot is not offered. */
export function partDeeds(part: WallPart, parts: readonly WallPart[]): readonly WallDeed[] {
  const { place, home, title, standing } = part;
  const lies = place.at === 'bin' || place.at === 'bench';
  const alive = standing.is !== 'dead';
  const carrier = parts.find((one) => place.at === 'with' && one.id === place.part);
  return [
    'proved',
    ...(alive ? (['failed'] as const) : []),
    ...(title?.as === 'lent' && home ? (['take-back'] as const) : []),
    ...(title === null && home && !lies && place.at !== 'with' && place.at !== 'slot' ? (['home'] as const) : []),
    ...((lies || title?.as === 'on-trial') && alive && part.tag ? (['lend'] as const) : []),
    ...(lies && part.riders.length === 0 ? (['join'] as const) : []),
    ...(carrier && carrier.place.at !== 'slot' ? (['split'] as const) : []),
    ...(lies || place.at === 'rig' ? (['move'] as const) : []),
    ...(lies && part.reservedFor === null ? (['send'] as const) : []),
    ...(place.at === 'transit' ? (['arrived'] as const) : []),
    ...(part.reservedFor !== null
      ? (['release'] as const)
      : place.at === 'bin' || place.at === 'rig'
        ? (['hold'] as const)
        : []),
    ...(lies && part.reservedFor === null ? (['sell', 'recycle'] as const) : []),
    'facts',
    'new-tag',
    ...(part.tag ? (['print-tag', 'void-tag'] as const) : []),
  ];
}
