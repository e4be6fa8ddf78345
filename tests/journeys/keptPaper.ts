import { existsSync, mkdtempSync, readFileSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ReadPdf, readPdf } from '../builders/papers/readPdf.ts';
import { expect } from './runtime/journey.ts';
import type { OpenedApp } from './runtime/openApp.ts';

/** Opens a paper of the job, keeps it as a file by the window's own key, and reads it back by an independent reader. */
export async function keptPaper({ page, electron }: OpenedApp, name: RegExp): Promise<ReadPdf> {
  await page.getByRole('region', { name: 'Papers' }).getByRole('button', { name }).first().click();
  const keep = page.getByRole('button', { name: 'Keep as a file' });
  if (!electron) {
    const download = page.waitForEvent('download');
    await keep.click();
    return readPdf(new Uint8Array(readFileSync(await (await download).path())));
  }
  const path = join(mkdtempSync(join(tmpdir(), 'knowngood-paper-')), 'paper.pdf');
  // A window would ask where to keep it; a journey answers beforehand.
  await electron.evaluate(({ session }, to) => {
    session.defaultSession.once('will-download', (_event, item) => item.setSavePath(to));
  }, path);
  await keep.click();
  await expect.poll(() => existsSync(path) && statSync(path).size > 1000).toBe(true);
  return readPdf(new Uint8Array(readFileSync(path)));
}
