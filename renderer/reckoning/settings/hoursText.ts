import type { OpenFrom } from '../../../core/job/shop.ts';

/** A day's hours as they are written: `09:00-12:30, 14:00-18:00`; nothing for a closed day. */
export const hoursText = (open: readonly OpenFrom[], weekday: number): string =>
  open
    .filter((one) => one.weekday === weekday)
    .toSorted((a, b) => (a.from < b.from ? -1 : 1))
    .map(({ from, to }) => `${from}-${to}`)
    .join(', ');

const STRETCH = /^(\d{1,2})(?::?(\d{2}))?\s*[-–]\s*(\d{1,2})(?::?(\d{2}))?$/;

/** What was written for a day, as hours; null where it cannot be read, ends before it begins, or overlaps. */
export function hoursFrom(text: string, weekday: number): readonly OpenFrom[] | null {
  const hours: OpenFrom[] = [];
  for (const part of text.split(/[,;]/).map((one) => one.trim())) {
    if (part === '') continue;
    const read = STRETCH.exec(part);
    const [from, to] = [clock(read?.[1], read?.[2]), clock(read?.[3], read?.[4])];
    if (!from || !to || from >= to || (hours.at(-1)?.to ?? '') > from) return null;
    hours.push({ weekday, from, to });
  }
  return hours;
}

function clock(hour: string | undefined, minute = '00'): string | null {
  if (hour === undefined || Number(hour) > 23 || Number(minute) > 59) return null;
  return `${hour.padStart(2, '0')}:${minute}`;
}
