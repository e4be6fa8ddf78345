import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import story from '../../../assets/demo/story.json' with { type: 'json' };
import { fromWall } from '../../../core/calendar.ts';
import { issueTag } from '../../../core/custody/tag.ts';
import type { JobId } from '../../../core/ids.ts';
import { phaseOf } from '../../../core/job/work.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { takingIn } from '../../../tests/builders/takingIn.ts';
import { seededChance } from '../../cli/demo/seededChance.ts';

const MINUTE = 60_000;
const ZONE = shopOf.settings.zone;
/** A Tuesday on which the shop is open from nine to six. */
const at = (time: string, day = '2026-10-06') => fromWall(`${day}T${time}`, ZONE);
const use = { loaner: null, slots: [], parts: [] };

let desk: Desk;
let a: JobId;
let b: JobId;
beforeEach(async () => {
  desk = await aDesk();
  desk.folder.clock.now = at('09:30');
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  [a, b] = [await takenIn('the dark one'), await takenIn('the loud one')];
  desk.folder.clock.now = at('10:00');
});
afterEach(() => desk.close());

const { randomInt } = seededChance(11);
let phones = 0;
async function takenIn(called: string): Promise<JobId> {
  const done = await desk.ask(
    'takeIn',
    takingIn({
      owner: { fresh: { ...story.owner, phone: `01632 9600${10 + ++phones}` } },
      machine: { fresh: { called, tag: issueTag(randomInt), serial: null } },
      limitMinor: 40_000,
    }),
  );
  const job = done.firstStream.slice('job:'.length) as JobId;
  const answers = { open: 'yes', 'own-parts-in': 'yes', photos: 'yes' };
  await desk.ask('signSheet', { job, answers, signed: { name: story.owner.name, drawn: null, contentHash: null } });
  return job;
}

const now = () => desk.folder.clock.now;
const starts = (job: JobId, by = 'bram', startedAt: number = now()) =>
  desk.tries('startWork', { job, kind: 'step', what: 'look-inside', startedAt, tray: 't', use, ownWord: null }, by);
const workOf = async (job: JobId) => (await desk.view(job)).job?.work.at(-1);
const turns = async (job: JobId) =>
  (await workOf(job))?.turns.map((turn) => [turn.to, Math.round((turn.at - at('10:00')) / MINUTE)]);
const ends = async (job: JobId, handsOn: number, more: object = {}, by = 'bram') =>
  desk.tries(
    'finishWork',
    {
      job,
      run: (await workOf(job))?.run ?? '',
      endedAt: now(),
      outcome: 'same',
      handsOn,
      waiting: 0,
      readings: [],
      passed: null,
      note: null,
      endsWith: null,
      use,
      tray: 't',
      ...more,
    },
    by,
  );
const turnsTo = async (job: JobId, to: 'hands-on' | 'waiting', by = 'bram') =>
  desk.ask('turnWork', { job, run: (await workOf(job))?.run, to, at: now() }, by);

describe('one person at two machines', () => {
  it('is at one of them: hands-on at the second pauses the first, and the end of it gives the hands back', async () => {
    await starts(a);
    desk.pass(10);
    await starts(b);
    desk.pass(7);
    await ends(b, 7);
    expect(await turns(a)).toEqual([
      ['paused', 10],
      ['hands-on', 17],
    ]);
  });

  it('may let the first wait while hands are on the second: the wait runs on', async () => {
    await starts(a);
    desk.pass(2);
    await turnsTo(a, 'waiting');
    await starts(b);
    desk.pass(5);
    await ends(b, 5);
    expect(await turns(a)).toEqual([['waiting', 2]]);
  });

  it('gets its hands back when the second only waits, and pauses it by taking them to the first', async () => {
    await starts(a);
    desk.pass(3);
    await starts(b);
    desk.pass(4);
    await turnsTo(b, 'waiting');
    expect(phaseOf((await workOf(a)) ?? { startedAt: now(), turns: [] }).to).toBe('hands-on');
    desk.pass(5);
    await turnsTo(b, 'hands-on');
    expect(await turns(a)).toEqual([
      ['paused', 3],
      ['hands-on', 7],
      ['paused', 12],
    ]);
  });

  it('does not get its hands back where the owner took the word for it back meanwhile', async () => {
    await starts(a);
    desk.pass(3);
    await starts(b);
    await desk.ask('withdrawConsent', { job: a, id: 'open' }, 'mina');
    desk.pass(4);
    await ends(b, 4);
    expect((await workOf(b))?.endedAt).not.toBeNull();
    expect((await workOf(a))?.turns.at(-1)).toMatchObject({ to: 'paused', because: 'consent-missing' });
  });

  it('does not get its hands back where the clock stopped with the screen: that is asked by itself', async () => {
    await starts(a);
    desk.pass(3);
    await desk.ask('stopClocks', { at: now() });
    desk.pass(2);
    await starts(b);
    desk.pass(4);
    await ends(b, 4);
    expect((await workOf(b))?.endedAt).not.toBeNull();
    expect((await workOf(a))?.turns.at(-1)).toMatchObject({ to: 'paused', because: 'screen-locked' });
  });

  it('leaves another person’s clock alone', async () => {
    await starts(a, 'mina');
    await starts(b, 'bram');
    expect(await turns(a)).toEqual([]);
  });
});

describe('the screen of somebody at work is locked', () => {
  it('stops the clock of their hands wherever it runs; a wait runs on, and so does another person’s clock', async () => {
    await starts(a);
    await turnsTo(a, 'waiting');
    desk.pass(2);
    await starts(b);
    desk.pass(8);
    await desk.ask('stopClocks', { at: now() });
    expect(await turns(a)).toEqual([['waiting', 0]]);
    expect((await workOf(b))?.turns).toEqual([{ to: 'paused', at: now(), because: 'screen-locked' }]);
    await desk.refused('stopClocks', { at: now() });
    desk.pass(30);
    await turnsTo(b, 'hands-on');
    desk.pass(4);
    await ends(b, 42);
    expect(await workOf(b)).toMatchObject({ handsOn: 42 });
  });

  it('counts all the minutes when hands stayed on it: the clock goes on from where it stopped', async () => {
    await starts(a);
    desk.pass(10);
    const locked = now();
    await desk.ask('stopClocks', { at: locked });
    desk.pass(20);
    await desk.ask('turnWork', { job: a, run: (await workOf(a))?.run, to: 'hands-on', at: locked });
    expect(await turns(a)).toEqual([
      ['paused', 10],
      ['hands-on', 10],
    ]);
  });
});

describe('a forgotten clock', () => {
  it('counts until closing time, is flagged with what it ran, and is not dropped', async () => {
    desk.folder.clock.now = at('17:30');
    await starts(a);
    desk.folder.clock.now = at('09:10', '2026-10-07');
    await ends(a, 940);
    expect(await workOf(a)).toMatchObject({ handsOn: 30, forgotten: { because: 'closing-time', ran: 940 } });
  });

  it('counts two hours of a stretch without a word; minutes that somebody says stand, and stay flagged', async () => {
    await starts(a);
    desk.pass(300);
    await ends(a, 300);
    expect(await workOf(a)).toMatchObject({ handsOn: 120, forgotten: { because: 'too-long', ran: 300 } });
    desk.folder.clock.now = at('10:00');
    await starts(b);
    desk.pass(300);
    await ends(b, 180, { minutesBy: 'hand' });
    expect(await workOf(b)).toMatchObject({ handsOn: 180, forgotten: { because: 'too-long' } });
  });

  it('is none where it waited: a pass may run over night', async () => {
    await starts(a);
    desk.pass(2);
    await turnsTo(a, 'waiting');
    desk.pass(900);
    await ends(a, 2, { waiting: 900 });
    expect(await workOf(a)).toMatchObject({ handsOn: 2, waiting: 900 });
    expect((await workOf(a))?.forgotten).toBeUndefined();
  });
});

describe('times that cannot be', () => {
  it('are refused: a clock set back, a time that has not come, less than nothing', async () => {
    expect(await starts(a, 'bram', now() + 20 * MINUTE)).toMatchObject({ refusal: { refused: 'clock-ahead' } });
    await starts(a);
    desk.pass(5);
    expect(await ends(a, 1, { endedAt: now() - 60 * MINUTE })).toMatchObject({
      ok: false,
      refusal: { refused: 'clock-set-back' },
    });
    expect(await ends(a, 1, { endedAt: now() + 60 * MINUTE })).toMatchObject({ refusal: { refused: 'clock-ahead' } });
    await expect(ends(a, -3)).rejects.toThrow(/handsOn/);
    expect((await workOf(a))?.endedAt).toBeNull();
  });
});
