import { fromWall } from '../../../core/calendar.ts';
import type { PartId } from '../../../core/ids.ts';
import { line } from './lines.ts';
import { STORY } from './story.ts';
import type { Teller } from './teller.ts';

export type WallPart = (typeof STORY.wall)[number];

/** Sets the shop up: settings, staff, second rig, and the wall with what is on it. */
export async function openingDay(teller: Teller, wall: readonly WallPart[]): Promise<void> {
  const { shop, story } = STORY;
  await teller.ask('mina', 'openShop', { settings: shop.settings, staff: shop.staff });
  await teller.ask('bram', 'knowRig', shop.rig);
  for (const { no, tag, kind, name, attributes, standing, place, valueMinor } of wall) {
    const { on, ...rest } = standing as typeof standing & { readonly on?: string };
    const done = await teller.ask('bram', 'knowPart', {
      tag,
      kind,
      name,
      attributes,
      place,
      valueMinor,
      standing: on === undefined ? rest : { ...rest, at: fromWall(on, story.zone) },
    });
    teller.remember(no, done.firstStream.slice('part:'.length) as PartId);
  }
  teller.say(line('opened', { shop: shop.settings.name, parts: wall.length, people: shop.staff.length }));
}
