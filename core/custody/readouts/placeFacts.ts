import type { EpochMs } from '../../time.ts';
import type { Place } from '../place.ts';

type Gone = Extract<Place, { readonly at: 'gone' }>;
type PlaceSays = Exclude<Place['at'], 'gone'> | `gone-${Gone['why']}`;

/** What is said of a place: a name by which its words are found, and the facts that go into them. */
export type PlaceFacts = {
  readonly says: PlaceSays;
  readonly facts: Readonly<Record<string, string>>;
  /** The day that belongs to it, to be written as its reader does: until when it is kept, since when it is not found. */
  readonly day?: EpochMs;
};

/** A place as it is told, on every screen, paper and line; no other place makes words of one: `holder` is what its machine, or the part it moves with, is called. */
export function placeFacts(place: Place, holder: string | null): PlaceFacts {
  const named = { holder: holder ?? '?' };
  switch (place.at) {
    case 'slot':
      return { says: 'slot', facts: { ...named, slot: place.slot } };
    case 'rig':
      return { says: 'rig', facts: { slot: place.slot } };
    case 'with':
      return { says: 'with', facts: named };
    case 'bench':
      return { says: 'bench', facts: { bench: place.bench } };
    case 'tray':
      return { says: 'tray', facts: { tray: place.tray } };
    case 'bin':
      return { says: 'bin', facts: { bin: place.bin } };
    case 'kept':
      return { says: 'kept', facts: { shelf: place.shelf }, day: place.until };
    case 'transit':
      return { says: 'transit', facts: { to: place.to, carrier: place.carrier, number: place.number } };
    case 'away':
      return { says: 'away', facts: { name: place.name } };
    case 'not-found':
      return { says: 'not-found', facts: { lastSeen: place.lastSeen }, day: place.since };
    case 'gone':
      return { says: `gone-${place.why}`, facts: {} };
    case 'with-owner':
      return { says: 'with-owner', facts: {} };
  }
}
