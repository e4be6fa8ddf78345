import { expect, it } from 'vitest';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import type { Stage } from '../../stage.ts';
import { epochMs } from '../../time.ts';
import { bandOf } from './band.ts';

it.each<[Stage, string]>([
  ['taken-in', 'ours'],
  ['tracing', 'ours'],
  ['fitting', 'ours'],
  ['owners-word-needed', 'owners'],
  ['part-on-the-way', 'suppliers'],
  ['ready', 'ready'],
  ['not-collected', 'ready'],
])('at %s it is the move of: %s', (stage, band) => {
  expect(bandOf(aJobAt(stage))).toBe(band);
});

it('what goes home as it came is ours to close up, and ready once the owner was told', () => {
  expect(bandOf(aJobAt('home-as-it-came'))).toBe('ours');
  expect(bandOf(aJobAt('home-as-it-came', { toldReadyAt: epochMs(1) }))).toBe('ready');
});
