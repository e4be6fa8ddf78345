import { importsOf, packageOf, target } from './importsOf.ts';
import { type Finding, isTest, place, type Source } from './source.ts';

/** What the files below a path may import. The first rule whose `files` fits a file is the one that holds for it. */
type Rule = {
  readonly files: RegExp;
  /** Own files, by path from the root. */
  readonly own: RegExp;
  /** Packages and `node:` modules; a package nobody listed is a finding, so that each is decided once. */
  readonly outside: RegExp;
};

const DATA = 'assets/.*\\.json';
const NOTHING = /^$/;

const ROOMS = ['bench', 'counter', 'day-line', 'reckoning', 'wall'];

const ON_THE_PAGE = packages(
  'react',
  'react-dom',
  'react-aria-components',
  'react-router',
  '@tanstack/react-query',
  '@orpc/client',
  '@orpc/contract',
  '@orpc/tanstack-query',
  'bwip-js',
  'qr',
  'zod',
  'source-sans',
  'source-serif',
);

const RULES: readonly Rule[] = [
  {
    files: /^core\/contract\//,
    own: rule('core/', DATA),
    outside: packages('zod', 'intl-messageformat', 'temporal-polyfill', '@orpc/contract'),
  },
  { files: /^core\//, own: rule('core/', DATA), outside: packages('zod', 'intl-messageformat', 'temporal-polyfill') },
  {
    files: /^db\//,
    own: rule('db/', 'core/'),
    outside: packages('kysely', 'better-sqlite3', 'zod', 'node:.*'),
  },
  // The build is the one launcher that runs after the packages are there.
  {
    files: /^electron\/launch\/build/,
    own: rule('electron/launch/'),
    outside: packages('rolldown', 'vite', '@vitejs/plugin-react', 'node:.*'),
  },
  { files: /^electron\/launch\//, own: rule('electron/launch/'), outside: packages('node:.*') },
  // Of the build as well: what the bundles are made of.
  {
    files: /^electron\/shipped\//,
    own: rule('electron/shipped/'),
    outside: packages('@electron/fuses', 'rolldown-license-plugin', '@cyclonedx/cyclonedx-library', 'zod', 'node:.*'),
  },
  // Windows and the bridge never touch the database: only the service does.
  {
    files: /^electron\/(main|preload)\//,
    own: rule('electron/', 'core/', DATA),
    outside: packages('electron', 'node:.*'),
  },
  // Only where the service may find itself inside Electron, and then for the type of its port.
  {
    files: /^electron\/service\/transport\//,
    own: rule('electron/', 'core/'),
    outside: packages('electron', '@orpc/.*', 'zod', 'node:.*'),
  },
  // Where PINs and recovery words are hashed, and nowhere else.
  {
    files: /^electron\/service\/people\//,
    own: rule('electron/', 'db/', 'core/'),
    outside: packages('@noble/hashes', '@scure/bip39', 'node:.*'),
  },
  {
    files: /^electron\//,
    own: rule('electron/', 'db/', 'core/', 'assets/'),
    outside: packages('@orpc/.*', 'zod', 'pdfkit', 'pdfjs-dist', 'bwip-js', 'source-sans', 'source-serif', 'node:.*'),
  },
  // A room knows no other: what two of them show lies beside them (`renderer/jobs`, `terms`, `parts`).
  ...ROOMS.map((room) => ({
    files: new RegExp(`^renderer/${room}/`),
    own: rule(`renderer/(?!(${ROOMS.filter((other) => other !== room).join('|')})/)`, 'core/', 'assets/'),
    outside: ON_THE_PAGE,
  })),
  { files: /^renderer\//, own: rule('renderer/', 'core/', 'assets/'), outside: ON_THE_PAGE },
  // The runner starts on a machine without packages.
  {
    files: /^tests\/(run\.mjs|runner\/|electronRuntime\/)/,
    own: rule('tests/', 'electron/launch/'),
    outside: packages('node:.*'),
  },
  { files: /^tests\//, own: /./, outside: /./ },
];

/** What a test beside the code may import on top of its own folder's rule. */
const BESIDE = {
  own: rule('tests/(builders|openData)', 'assets/'),
  outside: packages('vitest', 'fast-check', '@vitest/.*', 'node:.*', 'react-dom', 'pdfjs-dist'),
};

function rule(...starts: readonly string[]): RegExp {
  return new RegExp(`^(${starts.join('|')})`);
}

function packages(...names: readonly string[]): RegExp {
  return new RegExp(`^(${names.join('|')})$`);
}

/**
 * Imports that go against the house: renderer → core/contract ← electron → db → core, and core knows nobody.
 * Imports of types count like any other, since they bind the same way.
 */
export function wrongImports(source: Source): readonly Finding[] {
  const rules = RULES.find(({ files }) => files.test(source.path));
  if (!rules) return [];
  const beside = isTest(source) && !source.path.startsWith('tests/');
  const own = [rules.own, beside ? BESIDE.own : NOTHING];
  const outside = [rules.outside, beside ? BESIDE.outside : NOTHING];
  return importsOf(source).flatMap(({ node, from }) => {
    const to = target(source, from);
    const allowed =
      'own' in to
        ? own.some((pattern) => pattern.test(to.own))
        : outside.some((pattern) => pattern.test(to.outside.startsWith('node:') ? to.outside : packageOf(to.outside)));
    return allowed ? [] : [`${place(source, node)} may not import ${from}`];
  });
}
