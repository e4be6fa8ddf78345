import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { serveForTest } from './runtime/serveForTest.ts';

for (const how of ['its launcher is gone', 'it is told to by a signal'] as const) {
  test(`the service closes the shop in order when ${how}`, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'knowngood-ending-'));
    const place = { data: join(folder, 'shop'), config: join(folder, 'config') };
    const served = await serveForTest(place);
    expect(existsSync(join(place.data, 'service.lock'))).toBe(true);
    if (how === 'it is told to by a signal') process.kill(served.pid, 'SIGTERM');
    expect(await served.end()).toBe(0);
    expect(existsSync(join(place.data, 'service.lock'))).toBe(false);
    rmSync(folder, { recursive: true });
  });
}
