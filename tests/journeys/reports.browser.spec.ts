import { deflateRawSync } from 'node:zlib';
import { doStep } from './benchHands.ts';
import { OWNER, takeIn } from './counterHands.ts';
import { accessibilityFaults } from './runtime/accessibilityFaults.ts';
import { expect, test } from './runtime/journey.ts';
import { setUpShop } from './runtime/setUpShop.ts';

/** What two tools printed of one machine, in one file, with the line ends of another system. */
const report = (pending: number) =>
  `# dmidecode 3.3
Getting SMBIOS data from sysfs.
SMBIOS 3.2.0 present.

Handle 0x0002, DMI type 2, 15 bytes
Base Board Information
	Manufacturer: Plainmakers
	Product Name: PM-B2
	Serial Number: PMB2-77421
	Type: Motherboard

Handle 0x0010, DMI type 16, 23 bytes
Physical Memory Array
	Location: System Board Or Motherboard
	Use: System Memory
	Number Of Devices: 2

Handle 0x0011, DMI type 17, 40 bytes
Memory Device
	Array Handle: 0x0010
	Size: 8192 MB
	Form Factor: DIMM
	Locator: DIMM_A1
	Type: DDR4
	Speed: 2666 MT/s

smartctl 7.3 2022-02-28 r5338 [x86_64-linux-6.1.0] (local build)
=== START OF INFORMATION SECTION ===
Device Model:     Plain Disk 1
Serial Number:    PD1-000417
Rotation Rate:    7200 rpm
=== START OF READ SMART DATA SECTION ===
SMART overall-health self-assessment test result: PASSED
ID# ATTRIBUTE_NAME          FLAG     VALUE WORST THRESH TYPE      UPDATED  WHEN_FAILED RAW_VALUE
  5 Reallocated_Sector_Ct   0x0033   100   100   010    Pre-fail  Always       -       0
  9 Power_On_Hours          0x0032   093   093   000    Old_age   Always       -       5120
197 Current_Pending_Sector  0x0032   100   100   000    Old_age   Always       -       ${pending}
`.replaceAll('\n', '\r\n');

const PICTURE = Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex');
const PACKED = Buffer.concat([Buffer.from('504b0304', 'hex'), deflateRawSync(Buffer.from('a report'))]);

test('the machine’s own report is taken at the counter, and proving tells what grew since', async ({ app }) => {
  test.setTimeout(150_000);
  const { page } = app;
  await setUpShop(page);
  await page.getByRole('link', { name: 'Counter' }).click();
  const file = page.locator('input[type=file][accept*=".log"]').first();
  for (const [name, buffer, says] of [
    ['board.png', PICTURE, /board\.png: .*picture/i],
    ['report.zip', PACKED, /report\.zip: .*(packed|zip|archive)/i],
    ['empty.txt', Buffer.alloc(0), /empty\.txt: .*empty/i],
  ] as const) {
    await file.setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
    await expect(page.getByText(says)).toBeVisible();
  }
  await file.setInputFiles({ name: 'said', mimeType: '', buffer: Buffer.from(`\ufeff${report(8)}`, 'utf16le') });
  await expect(page.getByText('Plainmakers PM-B2')).toBeVisible();
  await expect(page.getByText(/Plain Disk 1.*8/)).toBeVisible();
  await page
    .getByRole('radiogroup', { name: /serial/i })
    .getByText('yes', { exact: true })
    .click();
  expect(await accessibilityFaults(app), 'counter with a report').toEqual([]);
  await takeIn(page);

  await page.getByRole('link', { name: 'Bench' }).click();
  await page.getByRole('button', { name: `Open ${OWNER}` }).click();
  await doStep(page, 'Reseat the memory until both ends latch', /^it works/);
  await page.getByRole('button', { name: 'Record as cured' }).click();
  const proofs = page.getByRole('region', { name: 'Final tests' });
  await proofs.getByRole('button', { name: 'Start: Memory pass' }).click();
  const printed = proofs.getByRole('textbox', { name: /^Drop or paste what/ });
  await printed.fill('memory: 0 errors in 3 h 45 min, 2 passes');
  const read = proofs.getByRole('list', { name: 'What was read' });
  await expect(read).toContainText('0 errors');
  await proofs.getByRole('button', { name: 'Passed' }).click();

  await proofs.getByRole('button', { name: 'Start: Drives’ own health' }).click();
  await printed.fill('it hums as it should');
  await expect(proofs.getByRole('button', { name: 'Passed' })).toBeDisabled();
  await printed.fill(report(12));
  await expect(read.getByRole('listitem').first()).toContainText('8 before, 12 after: it grew on our bench');
  expect(await accessibilityFaults(app), 'proving with what a tool printed').toEqual([]);
  await proofs.getByRole('button', { name: 'Failed' }).click();
  await expect(page.getByRole('region', { name: 'Before it goes home' })).toContainText('Drives’ own health failed');
});
