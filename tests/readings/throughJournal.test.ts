import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import shopOf from '../../assets/demo/shop.json' with { type: 'json' };
import type { JobId } from '../../core/ids.ts';
import { canonicalJson } from '../../core/journal/canonicalJson.ts';
import { ownReportOf } from '../../core/readings/ownReportOf.ts';
import { readMachineReport } from '../../core/readings/readMachineReport.ts';
import { saidOf } from '../../core/readings/readText.ts';
import { aDesk, type Desk } from '../builders/desk.ts';
import { textIn } from '../builders/filesIn.ts';
import { aShopFolder } from '../builders/shopFolder.ts';
import { taggedMachine, takingIn } from '../builders/takingIn.ts';
import { describeOverOpenData } from '../openData.ts';

/** Takes one machine in, as with every job. */
async function takenIn(desk: Desk): Promise<JobId> {
  const done = await desk.ask('takeIn', takingIn({ machine: taggedMachine }));
  return done.firstStream.slice('job:'.length) as JobId;
}

const said = (text: string) => ({ text, taken: null, keepSerials: false });

describeOverOpenData('what a machine said of itself', (data) => {
  it('is the same after the journal, a closing, an opening and a rebuilding, for every kind of dump', async () => {
    const desk = await aDesk();
    await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
    const job = await takenIn(desk);
    const dumps = ['dmi-003.txt', 'dmi-021.txt', 'lscpu-001.txt', 'lshw-001.txt', 'lspci-001.txt', 'smart-009.txt'];
    const texts = dumps.map((name) => readFileSync(join(data.folder, 'hardware', name), 'latin1'));
    for (const text of texts) await desk.ask('readReport', { job, ...said(text) });
    const { machine } = await desk.view(job);
    const stream = `machine:${machine?.id}` as const;
    await desk.shop.close();
    const again = await aShopFolder(desk.folder.folder).opened();
    await again.rebuild();
    const kept = (await (await again.read()).entries(stream)).filter((entry) => entry.kind === 'own-report-read');
    expect(kept.map(({ body }) => canonicalJson(body.report))).toEqual(
      texts.map((text) => canonicalJson(ownReportOf(saidOf(readMachineReport(text))) as never)),
    );
    await again.close();
    desk.folder.remove();
  });
});

const SERIAL = 'WX-77-PLAIN-0042';
const DRIVE = `smartctl 7.3 2022-02-28 r5338 [x86_64-linux-6.1.0] (local build)
=== START OF INFORMATION SECTION ===
Device Model:     Plain Disk 1
Serial Number:    ${SERIAL}
=== START OF READ SMART DATA SECTION ===
SMART overall-health self-assessment test result: PASSED
`;

it.each([true, false])('a serial number is kept only with the owner’s yes (%s), and never lies open', async (yes) => {
  const desk = await aDesk();
  await desk.ask('openShop', { settings: shopOf.settings, staff: shopOf.staff }, 'mina');
  const job = await takenIn(desk);
  await desk.ask('readReport', { job, ...said(DRIVE), keepSerials: yes });
  const { machine } = await desk.view(job);
  expect(machine?.report?.drives.map(({ model }) => model)).toEqual(['Plain Disk 1']);
  expect(machine?.driveSerials?.value?.map(({ serial }) => serial) ?? null).toEqual(yes ? [SERIAL] : null);
  expect(textIn(desk.folder.folder)).not.toContain(SERIAL);
  await desk.close();
});
