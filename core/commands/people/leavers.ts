import type { AnyEntry } from '../../entries/subjects.ts';
import { staffId } from '../../ids.ts';
import type { Staff } from '../../job/shop.ts';
import { type People, wayIn } from '../../people/people.ts';
import type { Refusal } from '../../refusal.ts';

/** Why the shop cannot be left to these people: with PINs in use, one who keeps it must have one. */
export function nobodyWouldKeepIt(people: People, staff: readonly Staff[]): Refusal | null {
  const keeps = ({ id, roles }: Staff) => roles.includes('keeper') && wayIn(people, id).hash !== null;
  return people.use !== 'on' || staff.some(keeps) ? null : { refused: 'keeper-with-pin-needed' };
}

/** What is written down of those who had a way in and are not among the people any more: it goes with them. */
export const leavers = (people: People, staff: readonly Staff[]): readonly AnyEntry[] =>
  Object.keys(people.of).flatMap((id) => {
    const gone = !staff.some((one) => one.id === id);
    return gone ? [{ stream: 'people', kind: 'person-left', body: { person: staffId(id) } } as const] : [];
  });
