import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };

const table = readFileSync(new URL('../../DEPENDENCIES.md', import.meta.url), 'utf8');
const rows = [...table.matchAll(/^\| `([^`]+)` \| (.*) \|$/gm)].map(([, name = '', reason = '']) => ({ name, reason }));

it('every package that is asked for has its reason, and no other has one', () => {
  const { dependencies, optionalDependencies, devDependencies } = manifest;
  const asked = Object.keys({ ...dependencies, ...optionalDependencies, ...devDependencies });
  expect(rows.map(({ name }) => name).toSorted()).toEqual(asked.toSorted());
  expect(rows.filter(({ reason }) => !/^[A-Za-z].{3,}\.$/.test(reason))).toEqual([]);
});

it('each is asked for in one version alone', () => {
  const { dependencies, optionalDependencies, devDependencies } = manifest;
  const loose = Object.entries({ ...dependencies, ...optionalDependencies, ...devDependencies }).filter(
    ([, version]) => !/^\d+\.\d+\.\d+$/.test(version),
  );
  // The lock file holds it to one all the same.
  expect(loose.map(([name]) => name)).toEqual(['fast-check']);
});
