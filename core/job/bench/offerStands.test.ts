import { expect, it } from 'vitest';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import { fromWall } from '../../calendar.ts';
import { epochMs } from '../../time.ts';
import { loggedSoFar, offerAsOf } from './offerStands.ts';

const ZONE = 'Europe/London';
const noon = fromWall('2026-03-03T12:00', ZONE);
const closing = fromWall('2026-03-03T17:50', ZONE);
const job = aJobAt('tracing', { seen: ['no-post'] });
const shown = { asOf: noon, logged: loggedSoFar(job) };

it('a step that stands on the screen is chosen as of then for as long as nothing is logged, however late it gets', () => {
  expect(offerAsOf(job, shown, closing, ZONE)).toBe(noon);
});
it('what is seen, or a verdict, or another day asks for the step anew', () => {
  expect(offerAsOf({ ...job, seen: ['no-post', 'smell'] }, shown, closing, ZONE)).toBe(closing);
  expect(offerAsOf({ ...job, verdict: { is: 'open' } as never }, shown, closing, ZONE)).toBe(closing);
  const morning = fromWall('2026-03-04T09:00', ZONE);
  expect(offerAsOf(job, shown, morning, ZONE)).toBe(morning);
});
it('nothing on screen, or a moment that is yet to come, is as of now', () => {
  expect(offerAsOf(job, undefined, noon, ZONE)).toBe(noon);
  expect(offerAsOf(job, { ...shown, asOf: epochMs(noon + 60_000) }, noon, ZONE)).toBe(noon);
});
