import { fromWall } from '../../../core/calendar.ts';
import { idOf } from '../../../core/entries/subjects.ts';
import { line } from './lines.ts';
import { STORY, type StoryPart } from './story.ts';
import type { Teller } from './teller.ts';

/** Sets the shop up: settings, staff, second rig, and the wall with what is on it. */
export async function openingDay(teller: Teller, wall: readonly StoryPart[]): Promise<void> {
  const { shop, story } = STORY;
  await teller.ask('mina', 'openShop', { settings: shop.settings, staff: shop.staff });
  // Three who trust each other at their benches: they work without PINs, and say so.
  await teller.ask('bram', 'workWithoutPins', {});
  await teller.ask('bram', 'knowRig', shop.rig);
  for (const { no, tag, kind, name, attributes, standing, place, valueMinor } of wall) {
    const { on, ...rest } = standing;
    const done = await teller.ask('bram', 'knowPart', {
      tag,
      kind,
      name,
      attributes,
      place,
      valueMinor,
      standing: on === undefined ? rest : { ...rest, at: fromWall(on, story.zone) },
    });
    teller.remember(no, idOf('part', done.firstStream));
  }
  teller.say(line('opened', { shop: shop.settings.name, parts: wall.length, people: shop.staff.length }));
}
