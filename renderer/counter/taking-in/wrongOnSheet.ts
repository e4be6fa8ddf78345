import { dayOf, fromWall, monthsAfter } from '../../../core/calendar.ts';
import { MOST_IN_LINE, MOST_IN_TEXT } from '../../../core/text/lengths.ts';
import { canBeDialled, canBeMailed } from '../fields/reachable.ts';
import type { TakingInSheet } from './sheet.ts';

/** A promise further off than this is a mistyped year; common practice, no source. */
const FURTHEST_MONTHS = 24;

/** What stands in a field and cannot be so, with what is the matter. */
export type WrongOnSheet = {
  readonly phone?: 'phone';
  readonly mail?: 'mail';
  readonly text?: 'too-long';
  readonly promise?: WrongDay;
  readonly deadline?: WrongDay;
};
type WrongDay = 'past' | 'too-far';

/** What is wrong on the sheet, by its field; empty when nothing is. */
export function wrongOnSheet(sheet: TakingInSheet, now: number, zone: string): WrongOnSheet {
  const { owner, ownWords, promise, deadline, report: _report, ...others } = sheet;
  const rest = { owner, ...others };
  const [promised, latest] = [wrongDay(promise, now, zone), wrongDay(deadline, now, zone)];
  return {
    ...(owner.known === null && !canBeDialled(owner.phone) && { phone: 'phone' }),
    ...(owner.known === null && !canBeMailed(owner.mail) && { mail: 'mail' }),
    ...((ownWords.trim().length > MOST_IN_TEXT || linesOf(rest).some((line) => line.trim().length > MOST_IN_LINE)) && {
      text: 'too-long',
    }),
    ...(promised && { promise: promised }),
    ...(latest && { deadline: latest }),
  };
}

/** Every text that stands anywhere in it. */
const linesOf = (value: unknown): readonly string[] =>
  typeof value === 'string'
    ? [value]
    : typeof value === 'object' && value !== null
      ? Object.values(value).flatMap(linesOf)
      : [];

function wrongDay(wall: string, now: number, zone: string): WrongDay | null {
  if (wall === '') return null;
  if (fromWall(wall, zone) < now) return 'past';
  return wall.slice(0, 10) > monthsAfter(dayOf(now, zone), FURTHEST_MONTHS) ? 'too-far' : null;
}
