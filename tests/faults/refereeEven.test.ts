import { expect, it } from 'vitest';
import { standardModel } from '../../core/tracing/live/loading/standardModel.ts';
import { play } from '../referee/states/play.ts';
import { begun } from '../referee/states/tally.ts';
import { walk } from '../referee/states/walk.ts';

it('leaves nothing open in ten thousand states of drawn machines, every second one of them', () => {
  const progress = begun(7, { at: 0, of: 2 });
  play(standardModel(), progress, 10_000, walk);
  expect(progress.rules).toEqual({});
  expect(progress.states).toBeGreaterThanOrEqual(10_000);
}, 300_000);
