import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { COMMAND_LIST } from '../../electron/cli/commands.ts';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');

it('the README names every command of the command line, and no other', () => {
  const named = [...readme.matchAll(/^\| `([\w-]+)`/gm)].map(([, name]) => name);
  expect(named.toSorted()).toEqual(COMMAND_LIST.map(({ name }) => name).toSorted());
});
