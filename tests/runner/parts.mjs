import { rmSync } from 'node:fs';
import { inHouse } from '../../electron/launch/house.mjs';

/** Where the parts leave their reports. */
export const reports = inHouse('node_modules', '.cache', 'knowngood-tests');
const reportOf = (name) => `${reports}/${name}.json`;
const config = 'tests/journeys/playwright.config.ts';

const RULES = ['--config', 'tests/house/knip.ts', '--no-config-hints'];

const tool = (name, minutes, steps) => ({ name, seconds: minutes * 60, counts: 'one', steps });

/** A part run by vitest: the tests below one folder, or the ones standing beside the code. */
const vitest = (name, minutes, folder, also = []) => ({
  name,
  seconds: minutes * 60,
  counts: 'vitest',
  folder,
  report: reportOf(name),
  steps: (files) => [
    ['vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${reportOf(name)}`, ...also].concat(
      files.length > 0 ? files : folder ? [folder] : [],
    ),
  ],
});

const APART = ['house', 'published', 'faults', 'speed'].flatMap((name) => ['--exclude', `tests/${name}/**`]);

/**
 * The parts of `npm test`, in order, each with its own time. A step is a program with its arguments; the first step
 * that fails ends the part. `KNOWNGOOD_LONG=1` in the environment asks faults and speed for their long form.
 */
export const parts = [
  tool('lint', 0.25, (files) => [['biome', 'check', ...(files.length > 0 ? files : ['.'])]]),
  {
    ...tool('types', 0.65, () => [['tsc', '-p', '.', '--noEmit']]),
    // A change of compiler options can leave a stale answer in the build info.
    before: () => rmSync(inHouse('node_modules', '.cache', 'tsbuildinfo'), { force: true }),
  },
  tool('unused', 0.25, () => [
    // Once without the tests, so that code which only its own tests use is found; once with them, for the packages.
    ['knip', ...RULES, '--production', '--include', 'files,exports,types,unresolved,duplicates'],
    ['knip', ...RULES, '--include', 'dependencies,unlisted,binaries,unresolved'],
  ]),
  vitest('house', 0.5, 'tests/house/'),
  tool('build', 0.25, () => [['node', 'tests/runner/buildAnew.mjs']]),
  vitest('unit', 8.75, undefined, APART),
  vitest('published', 2, 'tests/published/'),
  // The short form; the whole is `npm run faults`, and the referee's `npm run referee`.
  vitest('faults', 2.5, 'tests/faults/'),
  // The short form; the whole is `npm run speed:tracing`.
  tool('speed', 0.75, () => [['node', 'tests/speed/tracing.ts', '--short', '--only', 'exact']]),
  {
    name: 'journeys',
    seconds: 12.6 * 60,
    counts: 'playwright',
    folder: 'tests/journeys/',
    report: reportOf('journeys'),
    needs: ['chromium', 'Xvfb'],
    env: { PLAYWRIGHT_JSON_OUTPUT_FILE: reportOf('journeys') },
    steps: (files) => [['xvfb-run', '-a', 'playwright', 'test', '--config', config, '--reporter=list,json', ...files]],
  },
];

/** What the set-up may take, packages and the Electron for tests included. With the parts: 30.5 minutes at most. */
export const SET_UP_SECONDS = 1.75 * 60;

/**
 * Which parts to run, and which files in them.
 *
 * `npm test`, `npm test -- unit lint`, `npm test -- unit core/money`, `npm test -- core/money/money.test.ts`.
 * @returns the chosen parts with the files for each, or `{ unknown }`, the word that names neither part nor file.
 */
export function choose(words, fileExists) {
  const named = parts.filter(({ name }) => words.includes(name));
  const files = words.filter((word) => !named.some(({ name }) => name === word));
  if (named.length > 0) return { chosen: named.map((part) => ({ part, files })) };
  const unknown = files.find((file) => !fileExists(file));
  if (unknown) return { unknown };
  const partOf = (file) => parts.find(({ folder }) => folder && file.startsWith(folder)) ?? partNamed('unit');
  const touched = parts.filter((part) => files.some((file) => partOf(file) === part));
  if (files.length === 0) return { chosen: parts.map((part) => ({ part, files: [] })) };
  return { chosen: touched.map((part) => ({ part, files: files.filter((file) => partOf(file) === part) })) };
}

const partNamed = (wanted) => parts.find(({ name }) => name === wanted);
