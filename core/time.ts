import { z } from 'zod';
import { type Brand, brand } from './brand.ts';

/** Milliseconds since 1970-01-01T00:00Z. */
export type EpochMs = Brand<number, 'EpochMs'>;
/** Minutes of work or of waiting, never negative; fractions allowed. */
export type Minutes = Brand<number, 'Minutes'>;

/** Lengths of time in minutes. */
export const HOUR_MINUTES = 60;
export const DAY_MINUTES = 24 * HOUR_MINUTES;

/** Lengths of time in milliseconds. A day of the calendar can be an hour longer or shorter: see `calendar.ts`. */
export const MINUTE_MS = 60_000;
export const HOUR_MS = 60 * MINUTE_MS;
export const DAY_MS = 24 * HOUR_MS;

export const minutes = brand<Minutes>();
export const epochMs = brand<EpochMs>();

/** As they stand in entries. */
export const epochMsShape = z.number().transform(epochMs);
export const minutesShape = z.number().transform(minutes);
