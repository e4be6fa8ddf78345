import { expect, it } from 'vitest';
import { compareDrives, type ReadDrive } from './compareDrives.ts';
import { proofsOfChanges, proofsOfRuns } from './proofs.ts';
import { readRunFigures } from './runFigures.ts';

const disk = (more: Partial<ReadDrive> = {}): ReadDrive => ({
  model: 'Plain Disk 1',
  kind: 'hdd',
  health: 'passed',
  powerOnHours: 1000,
  reallocated: 0,
  pending: 8,
  uncorrectable: 0,
  percentageUsed: null,
  mediaErrors: null,
  ...more,
});

it('tells that pending sectors grew on our bench', () => {
  const [change] = compareDrives([disk()], [disk({ pending: 12, powerOnHours: 1003 })]);
  expect(change).toMatchObject({ is: 'compared', by: 'model', hours: 3 });
  const [, pending] = proofsOfChanges(change ? [change] : []);
  expect(pending).toMatchObject({ value: '8 before, 12 after: it grew on our bench', within: false });
});

it('finds the same drive by its serial number whatever the order', () => {
  const before = [disk({ serial: 'A', pending: 1 }), disk({ serial: 'B', pending: 2 })];
  const changes = compareDrives(before, [disk({ serial: 'B', pending: 2 }), disk({ serial: 'A', pending: 5 })]);
  const ways = changes.map((change) => (change.is === 'compared' ? change.figures[1]?.change : change.is));
  expect(ways).toEqual(['same', 'grew']);
});

it('does not compare two drives of one model that nothing tells apart', () => {
  expect(compareDrives([disk(), disk()], [disk(), disk()])).toEqual([
    { is: 'cannot-tell-which', model: 'Plain Disk 1' },
  ]);
});

it('does not take a replaced drive of the same model for the old one', () => {
  const changes = compareDrives([disk({ serial: 'A' })], [disk({ serial: 'B' })]);
  expect(changes.map(({ is }) => is)).toEqual(['only-before', 'only-after']);
});

it('compares no figure that one reading lacks', () => {
  const [change] = compareDrives([disk({ uncorrectable: null })], [disk()]);
  expect(change).toMatchObject({ notCompared: ['uncorrectable'] });
});

it('does not call endurance that was used on the bench a fault', () => {
  const worn = { percentageUsed: 3, reallocated: null, pending: null, uncorrectable: null };
  const [proof] = proofsOfChanges(compareDrives([disk(worn)], [disk({ ...worn, percentageUsed: 4 })]));
  expect(proof?.within).toBeNull();
});

it.each([
  ['memory: 0 errors in 3 h 45 min, 2 passes', { run: 'memory-pass', passes: 2, errors: 0, minutes: 225 }],
  ['Memory\nTime: 3:45:10\nErrors: 2\nPass: 2', { run: 'memory-pass', passes: 2, errors: 2, minutes: 225 }],
  [
    'load: 60 min, no errors, 84 °C, limit 95 °C',
    { run: 'load-run', errors: 0, minutes: 60, celsius: 84, limitCelsius: 95 },
  ],
  ['load: limit 95 °C, 97 °C, 30 min', { run: 'load-run', errors: null, celsius: 97, limitCelsius: 95 }],
])('reads "%s" as typed', (text, figures) => {
  expect(readRunFigures(text)).toEqual([expect.objectContaining(figures)]);
});

it('passes no run whose errors nobody wrote down', () => {
  expect(proofsOfRuns(readRunFigures('memory: 4 passes'))[0]).toMatchObject({ within: null });
});

it('fails a load run that went over the limit typed with it', () => {
  const proofs = proofsOfRuns(readRunFigures('load: 30 min, no errors, 97 °C, limit 95 °C'));
  expect(proofs.map(({ within }) => within)).toEqual([true, false]);
});
