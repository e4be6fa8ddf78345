import type { WallPart } from '../terms/wallRows.ts';

/** What can be done with a part of ours as it stands; what cannot is not offered. */
export function deedsOf(part: WallPart, parts: readonly WallPart[]): readonly string[] {
  const { place, home, title, standing } = part;
  const lies = place.at === 'bin' || place.at === 'bench';
  const alive = standing.is !== 'dead';
  const carrier = parts.find((one) => place.at === 'with' && one.id === place.part);
  return [
    'proved',
    ...(alive ? ['failed'] : []),
    ...(title?.as === 'lent' && home ? ['take-back'] : []),
    ...(title === null && home && !lies && place.at !== 'with' && place.at !== 'slot' ? ['home'] : []),
    ...((lies || title?.as === 'on-trial') && alive && part.tag ? ['lend'] : []),
    ...(lies && part.riders.length === 0 ? ['join'] : []),
    ...(carrier && carrier.place.at !== 'slot' ? ['split'] : []),
    ...(lies || place.at === 'rig' ? ['move'] : []),
    ...(lies && part.reservedFor === null ? ['send'] : []),
    ...(place.at === 'transit' ? ['arrived'] : []),
    ...(part.reservedFor !== null ? ['release'] : place.at === 'bin' || place.at === 'rig' ? ['hold'] : []),
    ...(lies && part.reservedFor === null ? ['sell', 'recycle'] : []),
    'facts',
    'new-tag',
    ...(part.tag ? ['print-tag', 'void-tag'] : []),
  ];
}
