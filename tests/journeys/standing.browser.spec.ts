import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runDemo } from '../../electron/cli/demo/runDemo.ts';
import { tampered } from '../builders/tampered.ts';
import { expect, test } from './runtime/journey.ts';
import { openInBrowser } from './runtime/openApp.ts';

test('a shop of which entries are missing opens to be read: it says what is missing, where, and the ways out', async () => {
  const config = mkdtempSync(join(tmpdir(), 'knowngood-standing-'));
  const folder = join(config, 'knowngood');
  await runDemo({ out: null, machine: null, print: () => undefined, folder, until: 'taken-in' });
  const data = join(folder, 'shop');
  const cut = 'first_seq > (select max(first_seq) - 3 from command)';
  tampered(
    join(data, 'shop.db'),
    `create table gone as select min(first_seq) as seq from command where ${cut};
     delete from command where first_seq >= (select seq from gone);
     delete from journal where seq >= (select seq from gone); drop table gone`,
  );
  const app = await openInBrowser({ data, config });
  try {
    const { page } = app;
    await page.getByRole('button', { name: 'Bram Ostler' }).click();
    const standing = page.getByRole('status').filter({ hasText: 'For reading only.' });
    await expect(standing).toContainText(/The journal ends at \d+; up to \d+ was acknowledged/);
    await expect(standing).toContainText(join(data, 'shop.db'));
    await expect(standing.getByRole('listitem')).toHaveCount(2);
    await expect(standing).toContainText('knowngood go-on');
  } finally {
    await app.close();
    rmSync(config, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  }
});
