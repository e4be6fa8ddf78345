import { describe, expect, it } from 'vitest';
import { wrongImports } from './oneWayImports.ts';
import { filesBelow, isCode } from './source.ts';

const file = (path: string, text: string) => wrongImports({ path, text });

describe('imports go one way', () => {
  it('holds in the whole house', () => {
    expect(filesBelow().filter(isCode).flatMap(wrongImports)).toEqual([]);
  });

  it('finds a rule of the shop that reaches for the database, be it for a type only', () => {
    expect(file('core/job/a.ts', "import type { Row } from '../../db/row.ts';")).toEqual([
      'core/job/a.ts:1 may not import ../../db/row.ts',
    ]);
    expect(file('core/job/a.ts', "type Row = import('../../db/row.ts').Row;")).toHaveLength(1);
    expect(file('core/job/a.ts', "export * from '../../db/row.ts';")).toHaveLength(1);
    expect(file('core/job/a.ts', "const row = await import('../../db/row.ts');")).toHaveLength(1);
  });

  it('lets core have zod, the message and the calendar library, and the contract alone its own package', () => {
    const text =
      "import { z } from 'zod';\nimport { IntlMessageFormat } from 'intl-messageformat';\nimport { Temporal } from 'temporal-polyfill';\nimport { oc } from '@orpc/contract';";
    expect(file('core/contract/a.ts', text)).toEqual([]);
    expect(file('core/job/a.ts', text)).toEqual(['core/job/a.ts:4 may not import @orpc/contract']);
    expect(file('core/job/a.ts', "import { addDays } from 'date-fns';")).toHaveLength(1);
  });

  it('finds a screen that reaches for the database, the service or the machine', () => {
    for (const from of ['../../db/a.ts', '../../electron/service/a.ts', 'node:fs', 'electron', 'better-sqlite3']) {
      expect(file('renderer/bench/A.tsx', `import { a } from '${from}';`)).toHaveLength(1);
    }
    expect(file('renderer/bench/A.tsx', "import { a } from '../../core/contract/a.ts';")).toEqual([]);
  });

  it('finds a room that reaches into another, and lets it have what lies beside both', () => {
    expect(file('renderer/counter/job/A.tsx', "import { b } from '../../bench/log/B.tsx';")).toHaveLength(1);
    expect(file('renderer/counter/job/A.tsx', "import { b } from '../../jobs/B.tsx';")).toEqual([]);
    expect(file('renderer/counter/job/A.tsx', "import { b } from '../taking-in/B.tsx';")).toEqual([]);
  });

  it('keeps the main process off the database, and leaves the service to it', () => {
    const text = "import { open } from '../../db/open.ts';";
    expect(file('electron/main/a.ts', text)).toHaveLength(1);
    expect(file('electron/service/a.ts', text)).toEqual([]);
  });

  it('keeps the launcher free of packages', () => {
    expect(file('electron/launch/a.mjs', "import { z } from 'zod';")).toHaveLength(1);
    expect(file('electron/launch/a.mjs', "import { join } from 'node:path';\nimport { b } from './b.mjs';")).toEqual(
      [],
    );
  });

  it('finds what is imported under a name only known when it runs', () => {
    expect(file('core/job/a.ts', 'const a = await import(name);')).toEqual(['core/job/a.ts:1 may not import ?']);
  });

  it('does not take a word in a text or a comment for an import', () => {
    expect(file('core/job/a.ts', "// import '../../db/a.ts'\nexport const a = \"import x from 'electron'\";")).toEqual(
      [],
    );
  });

  it('lets a test beside the code use the test tools, but not climb the house', () => {
    expect(
      file('core/job/a.test.ts', "import { it } from 'vitest';\nimport { aJob } from '../../tests/builders/aJob.ts';"),
    ).toEqual([]);
    expect(file('core/job/a.test.ts', "import { a } from '../../db/a.ts';")).toHaveLength(1);
  });
});
