import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import story from '../../assets/demo/story.json' with { type: 'json' };
import labour from '../../assets/labour/work.json' with { type: 'json' };
import type { ReckoningSheet } from '../../core/contract/reckoningSheet.ts';
import type { JobSheet } from '../../core/contract/screens.ts';
import type { WorkTask } from '../../core/labour/types.ts';
import { epochMs } from '../../core/time.ts';
import { standardModel } from '../../core/tracing/live/loading/standardModel.ts';
import { fileWallet, isOpenRefusal, openShop } from '../../db/index.ts';
import { runDemo } from '../../electron/cli/demo/runDemo.ts';
import { minutesByOwnTimes, type OwnMinutes } from '../../electron/service/desk/closed/ownTimes.ts';
import { reckoning } from '../../electron/service/desk/sheets/reckoning.ts';
import { filesIn } from '../builders/filesIn.ts';

const STATED = labour.work as readonly WorkTask[];

const folder = mkdtempSync(join(tmpdir(), 'knowngood-story-'));
const said: string[] = [];
let sheet: JobSheet;

beforeAll(async () => {
  const told = await runDemo({
    out: join(folder, 'papers'),
    machine: null,
    print: (line) => void said.push(line),
    folder: join(folder, 'data'),
  });
  if (!told.ended) throw new Error('the story did not end');
  sheet = told.ended;
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the machine that stays dark since they moved house', () => {
  it('goes through its stages in order', () => {
    expect(sheet.job.stages.map((one) => one.stage)).toEqual([
      'taken-in',
      'first-power-on',
      'owners-word-needed',
      'tracing',
      'owners-word-needed',
      'fitting',
      'proving',
      'ready',
      'gone-home',
    ]);
  });
  it('is told dark, seen cycling, and stops for the owner’s word when the estimate no longer fits', () => {
    const [told, seen] = ['told', 'seen'].map((moment) =>
      sheet.job.estimates.find((estimate) => estimate.moment === moment),
    );
    expect(sheet.job.differs).toBe(true);
    expect(told?.price.p50).toBeLessThan(12_000);
    expect(seen?.handsOn.p50).toBeGreaterThan(told?.handsOn.p50 ?? 0);
    expect(seen?.passesLimit).toBeGreaterThan(told?.passesLimit ?? 1);
  });
  it('has its board confirmed on the second rig, and nothing else blamed', () => {
    const { verdict } = sheet.job;
    expect(verdict).toMatchObject({ is: 'confirmed', fault: 'dimm-slot', way: 'on-the-second-rig' });
    const dead = sheet.parts.filter((part) => part.standing.is === 'dead');
    expect(dead.map((part) => part.name)).toEqual(['Aldermoor AM-B46']);
  });
  it('leaves every loaner good again: a dead memory channel hurts nothing', () => {
    const ours = sheet.parts.filter((part) => part.belongs.to === 'shop');
    expect(ours.length).toBeGreaterThan(0);
    expect(ours.filter((part) => part.standing.is === 'exposed')).toEqual([]);
    expect(ours.filter((part) => part.place.at === 'slot')).toEqual([]);
  });
  it('has the lesser board disclosed in 19 attributes, 12 of them worse, and accepted by phone', () => {
    const offer = sheet.job.questions.find((question) => question.offer);
    expect(offer?.offer?.rows).toHaveLength(19);
    expect(offer?.offer?.rows.filter((row) => row.verdict === 'worse')).toHaveLength(12);
    expect(offer?.answer?.how.by).toBe('phone');
  });
  it('has the old board kept by the owner’s word and everything else of hers inside', () => {
    const hers = sheet.parts.filter((part) => part.belongs.to === 'owner');
    const outside = hers.filter((part) => part.place.at !== 'slot');
    expect(outside.map((part) => [part.name, part.place.at])).toEqual([['Aldermoor AM-B46', 'kept']]);
    expect(sheet.missing).toEqual([]);
  });
  // 192 minutes at £0.75 and the three items: the invented shop's own sum, done by hand.
  it('costs 192 minutes and £246.50, within £260.00', () => {
    expect(sheet.charges.handsOn).toBe(192);
    expect(sheet.charges.totalMinor).toBe(24_650);
    expect(sheet.job.limitMinor).toBe(26_000);
  });
  it('gives out every paper by its kind and language, the receipt as it was signed, the first tag and report superseded', () => {
    const kinds = [
      'bench-tag',
      'bill',
      'changed-finding-notice',
      'consent-sheet',
      'estimate',
      'intake-receipt',
      'owners-word-record',
      'part-tag',
      'replaced-part-slip',
      'return-report',
      'substitute-part-disclosure',
    ];
    for (const kind of kinds) expect(existsSync(join(folder, 'papers', `${kind}-en.pdf`)), kind).toBe(true);
    expect(readdirSync(join(folder, 'papers', 'superseded'))).toEqual(['bench-tag-en.pdf', 'return-report-en.pdf']);
  });
  it('says step by step what it did', () => {
    expect(said.at(-1)).toContain('Gone home');
    expect(said.length).toBeGreaterThan(50);
  });
});

describe('Reckoning after that one job', () => {
  let reckoned: ReckoningSheet;
  let own: OwnMinutes;
  beforeAll(async () => {
    const shop = await openShop({
      folder: join(folder, 'data', 'shop'),
      branch: 'main',
      clock: () => epochMs(Date.UTC(2026, 9, 16)),
      wallet: fileWallet(join(folder, 'data', 'wallet.key')),
      log: () => undefined,
    });
    if (isOpenRefusal(shop)) throw new Error(shop.refused);
    reckoned = await reckoning(await shop.read(), standardModel);
    own = await minutesByOwnTimes(await shop.read(), { modelFor: standardModel, work: STATED }, 'bram');
    await shop.close();
  });
  it('scores the estimate of each moment, and says that one job is too few', () => {
    expect(reckoned.jobs).toBe(1);
    expect(reckoned.notScored).toEqual({ asItCame: 0, nothingDone: 0, forgotten: 0, noEstimate: 0 });
    const inside = reckoned.calibration.find((one) => one.moment === 'seen')?.figures?.inside;
    expect(inside).toMatchObject({ of: 1, says: 'too-few-to-say' });
    expect((inside?.interval.high ?? 0) - (inside?.interval.low ?? 0)).toBeGreaterThan(0.9);
  });
  it('has task times moved by what the job took, too few to say of any', () => {
    expect(reckoned.times.length).toBeGreaterThan(3);
    expect(new Set(reckoned.times.map((one) => one.says))).toEqual(new Set(['too-few-to-say']));
    const steps = reckoned.times.filter((one) => one.of === 'step' && one.which === 'handsOn');
    const logged = sheet.job.work.filter((one) => one.kind === 'step' && !one.struck).length;
    const left = reckoned.timesLeftOut;
    expect(steps.reduce((sum, one) => sum + one.times, 0)).toBe(logged - left.untouched - left.unknown);
  });
  it('lets the next estimate take fitting as long as that job leaves likely, and cleaning too', () => {
    for (const id of ['fit-and-reassemble', 'prove', 'clean']) {
      const now = own.work.find((task) => task.id === id)?.minutes.likely;
      const told = reckoned.times.find((one) => one.task === id && one.which === 'handsOn')?.middle;
      expect([id, now?.toFixed(6)]).toEqual([id, told?.toFixed(6)]);
      expect([id, now]).not.toEqual([id, STATED.find((task) => task.id === id)?.minutes.likely]);
    }
    expect(own.work.find((task) => task.id === 'hand-over')).toEqual(STATED.find((task) => task.id === 'hand-over'));
  });
  it('draws the minutes of each step from what that job leaves likely, not from the model', () => {
    const steps = reckoned.times.filter((one) => one.of === 'step' && one.which === 'handsOn');
    for (const { task, middle } of steps)
      expect([task, Math.exp(own.stepTimes[task]?.middle ?? 0).toFixed(6)]).toEqual([task, middle.toFixed(6)]);
    expect(Object.keys(own.stepTimes).length).toBeGreaterThan(steps.length);
  });
  it('counts the confirmed fault for the priors, which are as stated until they are taken over', () => {
    expect(reckoned.priors.tally.counted).toBe(1);
    expect(reckoned.priors.takenOver).toBeNull();
    expect(reckoned.priors.moved.some((one) => one.fault === 'dimm-slot')).toBe(true);
  });
});

describe('what the demo entered about persons', () => {
  const { owner, told, machine } = story;
  const personal = [
    owner.name,
    owner.phone,
    owner.mail,
    'Lantern Steps',
    'Colm Amberley',
    told.ownWords,
    'pressed it again',
    machine.serial,
    'Mina Tidewell',
    'Bram Ostler',
    'Nessa Quill',
    story.finding.answered.readBack,
    'red moving folder',
    '5A10C3E1',
    'AMB46-20061204',
    'wrong slot (B1',
  ];
  const holdingOneOf = (forms: readonly Buffer[]) =>
    filesIn(join(folder, 'data'))
      .filter(({ bytes }) => forms.some((form) => bytes.includes(form)))
      .map(({ path }) => path);
  it.each(personal)('stands nowhere in the shop’s files in plain text: %s', (value) => {
    expect(holdingOneOf([Buffer.from(value, 'utf8'), Buffer.from(value, 'utf16le')])).toEqual([]);
  });
  it('is looked for in the real files: what is not personal is found there', () => {
    const holding = holdingOneOf([Buffer.from('dimm-slot')]);
    expect(holding.some((file) => file.includes('shop.db'))).toBe(true);
  });
});
