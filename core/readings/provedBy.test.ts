import { expect, it } from 'vitest';
import { drivesBefore, provedBy } from './provedBy.ts';
import { readMachineReport } from './readMachineReport.ts';

/** What `smartctl -a` prints of a plain disk, cut to what proving reads. */
const disk = (pending: number) => `smartctl 7.3 2022-02-28 r5338 [x86_64-linux-6.1.0] (local build)
=== START OF INFORMATION SECTION ===
Device Model:     Plain Disk 1
Rotation Rate:    7200 rpm
=== START OF READ SMART DATA SECTION ===
SMART overall-health self-assessment test result: PASSED
ID# ATTRIBUTE_NAME          FLAG     VALUE WORST THRESH TYPE      UPDATED  WHEN_FAILED RAW_VALUE
  5 Reallocated_Sector_Ct   0x0033   100   100   010    Pre-fail  Always       -       0
197 Current_Pending_Sector  0x0032   100   100   000    Old_age   Always       -       ${pending}
`;

it('says first that pending sectors grew on our bench, though the drive calls itself sound', () => {
  const before = drivesBefore(readMachineReport(disk(8)).drives, []);
  const [first] = provedBy(disk(12), before).proofs;
  expect(first).toMatchObject({ value: '8 before, 12 after: it grew on our bench', within: false });
});

it('holds a drive against its limits where no report was kept before', () => {
  const { proofs } = provedBy(disk(0), []);
  expect(proofs.length).toBeGreaterThan(0);
  expect(proofs.every(({ within }) => within === true)).toBe(true);
  expect(proofs.some(({ value }) => value.includes('before'))).toBe(false);
});

it('reads the figures of a memory pass as typed', () => {
  const { proofs } = provedBy('memory: 2 errors in 3 h 45 min, 2 passes', []);
  expect(proofs[0]).toMatchObject({ within: false });
});

it('says why when nothing in it can be proved, and says nothing of an empty field', () => {
  expect(provedBy('hello there', []).nothing).not.toBeNull();
  expect(provedBy('  ', [])).toEqual({ proofs: [], nothing: null });
});
