import { afterEach, expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import story from '../../assets/demo/story.json' with { type: 'json' };
import type { JobId } from '../../core/ids.ts';
import { noShop } from '../../core/job/shop.ts';
import { openEngine } from '../../electron/service/openEngine.ts';
import { openTools } from '../../electron/service/openTools.ts';
import { aDesk, type Desk } from '../builders/desk.ts';
import { takingIn } from '../builders/takingIn.ts';

const door = openTools(openEngine(), () => null).tracing(noShop);

let desk: Desk;
afterEach(() => desk.close());

/** One step of the real fault model; answers what the log says is out after it. */
async function aStep(job: JobId, what: string, endsWith: 'as-before' | 'out'): Promise<readonly string[]> {
  const use = { loaner: null, slots: [], parts: [] };
  const startedAt = desk.folder.clock.now;
  await desk.ask('startWork', { job, kind: 'step', what, startedAt, tray: 'T', use, ownWord: 'as agreed' });
  const run = (await desk.view(job)).job?.work.at(-1)?.run;
  const ended = { endedAt: startedAt, handsOn: 1, waiting: 0, readings: [], passed: null, note: null };
  // What it took out was not it: had it worked, that part would count as going back in.
  const outcome = door.rules(what)?.outcomes.find((one) => one === 'same');
  await desk.ask('finishWork', { job, run, outcome, endsWith, use, tray: 'T', ...ended });
  return (await desk.view(job)).job?.work.at(-1)?.leftOut ?? [];
}

it('drives left unplugged stay out of the reckoning through later steps, until they are plugged in again', async () => {
  desk = await aDesk(door);
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  const taken = await desk.ask('takeIn', takingIn({ limitMinor: 100_000 }));
  const job = taken.firstStream.slice('job:'.length) as JobId;
  await desk.ask('signSheet', {
    job,
    answers: story.answers,
    signed: { name: story.owner.name, drawn: null, contentHash: null },
  });
  const slot = { id: 'SATA 1', takes: 'drive', order: 1, source: 'by-hand' };
  const disk = { slot: 'SATA 1', kind: 'drive', name: 'Oakrill 2T', attributes: {}, serial: null, source: 'census' };
  await desk.ask('writeCensus', { job, slots: [slot], parts: [disk], gaps: [] });
  expect(await aStep(job, 'drives-off', 'out')).toContain('drive');
  await desk.ask('unplug', { job, slots: ['SATA 1'], out: [] });
  expect(await aStep(job, 'front-off', 'as-before')).toContain('drive');
  await desk.ask('plugIn', { job, slots: ['SATA 1'] });
  expect(await aStep(job, 'front-off', 'as-before')).not.toContain('drive');
});
