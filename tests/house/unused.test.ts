import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import rules, { AWAITED } from './knip.ts';
import { root } from './source.ts';

const folder = mkdtempSync(join(tmpdir(), 'knowngood-unused-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** A small project under our own rules, with one thing of each sort that nobody uses. */
function layOut() {
  const files = {
    'package.json': JSON.stringify({ name: 'small', type: 'module', dependencies: { zod: '4.6.7' } }),
    'knip.json': JSON.stringify({ ...rules, entry: ['electron/cli/main.ts!'] }),
    'electron/cli/main.ts': "import { used } from '../../core/used.ts';\nused();",
    'core/used.ts': 'export const used = () => inside;\nexport const inside = 1;\nexport const onlyTested = 2;',
    'core/used.test.ts': "import { onlyTested } from './used.ts';\nonlyTested;",
    'core/nobody.ts': 'export const nobody = 1;',
  };
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}

it('the check for unused code finds a file nobody imports, and an export that only a test uses', () => {
  layOut();
  const knip = join(root, 'node_modules/knip/bin/knip.js');
  const args = [knip, '--directory', folder, '--production', '--include', 'files,exports,types', '--reporter', 'json'];
  const report = JSON.parse(execFileSync(process.execPath, [...args, '--no-exit-code'], { encoding: 'utf8' }));
  const found = JSON.stringify(report);
  expect(found).toContain('core/nobody.ts');
  expect(found).toContain('onlyTested');
  expect(found).not.toContain('"inside"');
  expect(found).not.toContain('"used"');
});

it('what waits for its use is there, and says for what', () => {
  expect(Object.keys(AWAITED).filter((path) => !existsSync(join(root, path)))).toEqual([]);
  expect(Object.values(AWAITED).filter((reason) => reason.length < 20)).toEqual([]);
});
