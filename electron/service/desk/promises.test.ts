import { expect, it } from 'vitest';
import shopOf from '../../../assets/demo/shop.json' with { type: 'json' };
import { fromWall } from '../../../core/calendar.ts';
import type { JobId } from '../../../core/ids.ts';
import { anEstimate } from '../../../tests/builders/anEstimate.ts';
import { aDesk, type Desk } from '../../../tests/builders/desk.ts';
import { takingIn } from '../../../tests/builders/takingIn.ts';
import { dayLine } from './sheets/dayLine.ts';
import { jobSheet } from './sheets/jobSheet.ts';

const ZONE = shopOf.settings.zone;
/** The Tuesday of the test, at opening. The shop is closed on Sundays and Mondays. */
const TUESDAY = fromWall('2026-03-03T09:00', ZONE);
const closing = (date: string) => fromWall(`${date}T18:00`, ZONE);

async function opened(promises: object = {}): Promise<Desk> {
  const desk = await aDesk();
  desk.folder.clock.now = TUESDAY;
  const usual = { percentile: 0.8, closed: [], leadDays: { low: 1, likely: 2, high: 7 } };
  await desk.ask('openShop', {
    settings: { ...shopOf.settings, promises: { ...usual, ...promises } },
    staff: shopOf.staff,
  });
  return desk;
}

async function takenIn(desk: Desk, called: string): Promise<JobId> {
  const done = await desk.ask('takeIn', takingIn({ machine: { fresh: { called, tag: null, serial: null } } }));
  return done.firstStream.slice('job:'.length) as JobId;
}

const estimate = (job: JobId, p50: number) => ({ job, moment: 'told', ...anEstimate(p50) });

const sheetOf = async (desk: Desk, job: JobId) => {
  const sheet = await jobSheet(await desk.shop.read(), job, desk.folder.clock.now);
  if (!sheet) throw new Error('no such job');
  return sheet;
};
const pointOf = async (desk: Desk, job: JobId) =>
  (await dayLine(await desk.shop.read(), desk.folder.clock.now)).find((one) => one.job === job);

it('knows that a machine will be late before it is, says it on the phone, and writes down that the owner was told', async () => {
  const desk = await opened();
  const rush = await takenIn(desk, 'the one that came before');
  const job = await takenIn(desk, 'grey tower');
  await desk.ask('noteEstimate', estimate(job, 60));
  const wednesday = closing('2026-03-04');
  await desk.ask('promise', { job, at: wednesday, p90: wednesday, told: true });
  expect(await pointOf(desk, job)).toMatchObject({ late: false, willBeLate: false });

  // The one before it turns out to be two days of work, promised for the same evening.
  await desk.ask('noteEstimate', estimate(rush, 2400));
  await desk.ask('promise', { job: rush, at: wednesday - 1, p90: wednesday, told: true });
  const point = await pointOf(desk, job);
  expect(point).toMatchObject({ late: false, willBeLate: true, phone: { says: 'phone-will-be-late' } });
  expect(point?.likely).toBeGreaterThan(wednesday);
  const { outlook, phone } = await sheetOf(desk, job);
  expect(phone).toEqual(point?.phone);

  const day = outlook?.day ?? 0;
  await desk.ask('tellPromise', { job, at: day, p90: outlook?.p90, how: 'phone' });
  const told = await sheetOf(desk, job);
  expect(told.job.promised).toMatchObject({ at: day, told: true });
  expect(told.job.promisesTold).toMatchObject([{ promised: day, was: wednesday, how: 'phone', by: 'bram' }]);
  expect(told.phone).toMatchObject({ says: 'phone-told-later', facts: { was: wednesday, promised: day } });
  await desk.close();
});

it('does not promise a day on which the shop is closed, nor one that has passed', async () => {
  const desk = await opened({ closed: ['2026-03-05'] });
  const job = await takenIn(desk, 'grey tower');
  const tries = async (date: string) => {
    const at = closing(date);
    return (await desk.refused('promise', { job, at, p90: at, told: false })).refused;
  };
  expect(await tries('2026-03-09')).toBe('promise-on-closed-day');
  expect(await tries('2026-03-05')).toBe('promise-on-closed-day');
  expect(await tries('2026-02-27')).toBe('promise-in-the-past');
  const thursday = closing('2026-03-05');
  const { refused } = await desk.refused('tellPromise', { job, at: thursday, p90: thursday, how: 'mail' });
  expect(refused).toBe('promise-on-closed-day');
  await desk.close();
});

it('counts nobody who is not there: a technician’s own hours and the days the shop is shut move the day', async () => {
  const desk = await opened({ closed: ['2026-03-04', '2026-03-05', '2026-03-06'] });
  const job = await takenIn(desk, 'grey tower');
  await desk.ask('noteEstimate', estimate(job, 300));
  const day = async () => (await sheetOf(desk, job)).outlook?.day;
  // Tuesday is not enough for it, Wednesday to Friday the shop is shut, Saturday has three hours and a half.
  expect(await day()).toBe(fromWall('2026-03-07T13:00', ZONE));
  const hours = [{ weekday: 4, from: '09:00', to: '18:00' }];
  const staff = shopOf.staff.map((one) => ({ ...one, hours }));
  await desk.ask('changeStaff', { staff });
  // Thursday's hours are enough for the hands; the proof then runs into the night, and it is fetched on Friday.
  expect(await day()).toBe(closing('2026-03-13'));
  await desk.ask('changeStaff', { staff: staff.map((one) => ({ ...one, hours: [] })) });
  expect(await day()).toBeNull();
  await desk.close();
});
