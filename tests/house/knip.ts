/**
 * Written and checked, not yet called by a door: by file, what it waits for. A file named here counts as used with all
 * it exports, so the list is kept short, and a line goes when its use comes.
 */
export const AWAITED: Readonly<Record<string, string>> = {
  'core/figures/interval.ts': 'Reckoning and Kept say shares and rates with these intervals.',
  'core/figures/verdict.ts': 'Kept judges the shares and rates of families by it.',
  'core/fit/placement.ts': 'The Bench says by it what can be said of where the memory modules sit.',
  'renderer/kit/icons.tsx': 'ICON_NAMES lets the gallery show every icon.',
};

/** How unused files, exports and packages are found. A `!` marks what the app itself is made of, without its tests. */
const rules = {
  entry: [
    'electron/launch/{start,knowngood,pictures,build}.mjs!',
    'electron/cli/main.ts!',
    'electron/main/main.ts!',
    'electron/preload/preload.ts!',
    'electron/service/main.ts!',
    'electron/service/computing/thread.ts!',
    'electron/service/backups/thread.ts!',
    'electron/shipped/{main,setFuses}.ts!',
    'renderer/main.tsx!',
    'tests/run.mjs',
    'tests/runner/buildAnew.mjs',
    'tests/pictures/takePictures.ts',
    'tests/journeys/**/*.ts',
    ...Object.keys(AWAITED).map((path) => `${path}!`),
  ],
  project: ['{core,db,electron,renderer}/**/*.{ts,tsx,mjs}!', '!**/*.test.{ts,tsx}!', 'tests/**/*.{ts,mjs}'],
  ignoreExportsUsedInFile: true,
  // Named in a command of the runner, and as fonts in a style sheet and by a path put together: no import to be seen.
  ignoreDependencies: ['@biomejs/biome', 'source-sans', 'source-serif'],
  ignoreBinaries: ['mount', 'umount', 'pdftoppm', 'strace', 'zbarimg'],
};

export default rules;
