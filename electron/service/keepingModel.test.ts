import { expect, it } from 'vitest';
import { tracingDoorFor } from '../../core/bench/tracingDoorFor.ts';
import type { JobId } from '../../core/ids.ts';
import { liveTracing } from '../../core/tracing/live/liveTracing.ts';
import { standardModel } from '../../core/tracing/live/loading/standardModel.ts';
import { aDesk } from '../../tests/builders/desk.ts';
import { keepingModel } from './keepingModel.ts';

it('the bench works by the shop’s own edition from when it is taken into use until it goes back', async () => {
  const desk = await aDesk(tracingDoorFor(liveTracing, standardModel()));
  const modelFor = keepingModel();
  const railMinutes = async () => {
    const { shop } = await desk.view('no-job' as JobId);
    return tracingDoorFor(liveTracing, modelFor(shop)).rules('meas-rails')?.handsOn;
  };
  const changes = [{ file: 'steps.json', path: 'steps.meas-rails.handsOn', before: 4, after: 9 }];
  expect(await railMinutes()).toBe(4);
  await desk.ask('useModel', { name: 'slow hands', changes });
  expect(await railMinutes()).toBe(9);
  expect(await desk.refused('useModel', { name: 'again', changes })).toMatchObject({ refused: 'model-in-use-already' });
  expect(await desk.refused('useModel', { name: 'bad', changes: [{ ...changes[0], after: -1 }] })).toMatchObject({
    refused: 'fault-model',
    file: 'steps.json',
  });
  const tally = {
    counted: 30,
    excluded: { named: 2, handedOver: 1, notReproduced: 0, cameBack: 1, unknown: 0 },
    counts: [{ group: 'no-reaction', fault: 'fp-switch', jobs: 30 }],
  };
  const weight = async () => {
    const { shop } = await desk.view('no-job' as JobId);
    return modelFor(shop).faults.find((fault) => fault.id === 'fp-switch')?.weights['no-reaction'] ?? 0;
  };
  const stated = await weight();
  await desk.ask('takeOverPriors', { tally });
  expect(await weight()).toBeGreaterThan(2 * stated);
  await desk.ask('resetPriors', {});
  expect(await weight()).toBe(stated);
  await desk.ask('goBackToModel', {});
  expect(await railMinutes()).toBe(4);
  expect(await desk.refused('goBackToModel', {})).toMatchObject({ refused: 'model-is-as-delivered' });
  expect(await desk.refused('resetPriors', {})).toMatchObject({ refused: 'priors-are-as-stated' });
  expect(await desk.refused('takeOverPriors', { tally: { ...tally, counted: 0, counts: [] } })).toMatchObject({
    refused: 'nothing-to-learn-from',
  });
  await desk.close();
}, 60_000);
