import { z } from 'zod';
import { tagShape } from '../custody/part.ts';
import { type StaffId, staffIdShape } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import { personalShape } from '../journal/personal.ts';
import type { BodiesOf } from '../shape.ts';

/** How a PIN came to be set: as the shop's first, by whoever knew one, by the recovery words. */
export const PIN_SET_BY = ['first', 'pin', 'words'] as const;

/** Whose secret was tried: a person's PIN, or the recovery words. */
const triedShape = z.union([z.strictObject({ person: staffIdShape }), z.strictObject({ words: z.literal(true) })]);

/** A hash is a PHC string of argon2id; it is sealed like every personal value, and leaves the service never. */
const hashShape = personalShape(z.string());

export const PEOPLE_BODIES = {
  'pin-set': z.strictObject({ person: staffIdShape, hash: hashShape, by: z.enum(PIN_SET_BY) }),
  'recovery-words-made': z.strictObject({ hash: hashShape }),
  'pins-switched-off': z.strictObject({}),
  'badge-given': z.strictObject({ person: staffIdShape, tag: tagShape.nullable() }),
  'secret-missed': triedShape,
  /** Right again, after it had been missed. */
  'secret-met': triedShape,
  'person-left': z.strictObject({ person: staffIdShape }),
} as const;
export type PeopleBodies = BodiesOf<typeof PEOPLE_BODIES>;
export type PeopleEntry = EntryOf<'people', PeopleBodies>;

/** What is known of somebody's way in. */
export type WayIn = {
  /** Hash of the PIN; null where there is none, or it cannot be read any more. */
  readonly hash: string | null;
  readonly badge: string | null;
  /** Wrong PINs in a row. */
  readonly missed: number;
};

/** How the shop knows who is there. `none-yet`: nobody was asked so far. */
export type PinUse = 'none-yet' | 'off' | 'on';

/** The shop's people as they get in; apart from what screens are told of the shop, so that no sheet carries a hash. */
export type People = {
  readonly use: PinUse;
  readonly of: { readonly [person: StaffId]: WayIn };
  readonly words: { readonly hash: string | null; readonly missed: number } | null;
};

export const noPeople: People = { use: 'none-yet', of: {}, words: null };

const NO_WAY_IN: WayIn = { hash: null, badge: null, missed: 0 };

/** Somebody's way in; empty where nothing was set. */
export const wayIn = (people: People, person: StaffId): WayIn =>
  Object.hasOwn(people.of, person) ? (people.of[person] ?? NO_WAY_IN) : NO_WAY_IN;

/** The people after one more entry of their stream. */
export function applyPeople(people: People, entry: PeopleEntry): People {
  switch (entry.kind) {
    case 'pin-set':
      return { ...withWay(people, entry.body.person, { hash: entry.body.hash.value, missed: 0 }), use: 'on' };
    case 'recovery-words-made':
      return { ...people, words: { hash: entry.body.hash.value, missed: 0 } };
    case 'pins-switched-off':
      return { use: 'off', of: withoutHashes(people.of), words: null };
    case 'badge-given':
      return withWay(people, entry.body.person, { badge: entry.body.tag });
    case 'secret-missed':
      return withMissed(people, entry.body, (missed) => missed + 1);
    case 'secret-met':
      return withMissed(people, entry.body, () => 0);
    case 'person-left': {
      const { [entry.body.person]: _, ...of } = people.of;
      return { ...people, of };
    }
  }
}

const withWay = (people: People, person: StaffId, change: Partial<WayIn>): People => ({
  ...people,
  of: { ...people.of, [person]: { ...wayIn(people, person), ...change } },
});

function withMissed(people: People, tried: PeopleBodies['secret-missed'], count: (missed: number) => number): People {
  if ('person' in tried) return withWay(people, tried.person, { missed: count(wayIn(people, tried.person).missed) });
  return { ...people, words: people.words && { ...people.words, missed: count(people.words.missed) } };
}

const withoutHashes = (of: People['of']): People['of'] =>
  Object.fromEntries(
    Object.entries(of).map(([person, way]): [string, WayIn] => [person, { ...way, hash: null, missed: 0 }]),
  );
