import { expect, it } from 'vitest';
import { aJobAt, viewOf } from '../../../tests/builders/jobAt.ts';
import { epochMs } from '../../time.ts';
import { tracingCase } from './tracingCase.ts';
import type { JobView } from './tracingDoor.ts';

const view = { ...viewOf(aJobAt('tracing')), job: aJobAt('tracing') } as JobView;
/** A Tuesday in winter, when the invented shop closes at six. */
const at = (time: string) => tracingCase(view, undefined, epochMs(Date.parse(`2026-03-10T${time}:00Z`))).untilClosing;

it('knows how long the shop is still open, in quarters of an hour', () => {
  expect(at('17:35')).toBe(15);
  expect(at('17:31')).toBe(15);
  expect(at('15:00')).toBe(180);
});

it('makes nothing of the hour when somebody stayed on purpose, or where it was not asked', () => {
  expect(at('20:00')).toBeNull();
  expect(tracingCase(view).untilClosing).toBeNull();
});
