import { join } from 'node:path';
import { build, type Rolldown } from 'vite';
import { beforeAll, describe, expect, it } from 'vitest';

let chunks: readonly Rolldown.OutputChunk[] = [];

beforeAll(async () => {
  const built = await build({
    configFile: join(import.meta.dirname, '../vite.config.ts'),
    logLevel: 'silent',
    build: { write: false },
  });
  const outputs = Array.isArray(built) ? built : [built];
  chunks = outputs
    .flatMap((one) => ('output' in one ? one.output : []))
    .filter((one): one is Rolldown.OutputChunk => one.type === 'chunk');
}, 120_000);

/** What every shape of the library bears in its code, whatever names the build gave it. */
const SHAPE = /_zod\b/;

describe('the page as it is built', () => {
  it('is there, with the words and rules that screens use', () => {
    expect(chunks.length).toBeGreaterThan(0);
    expect(chunks.map(({ code }) => code).join('')).toContain('goBackAsItCame');
  });

  it('has no shapes in any of its files: what comes in is checked at the service', () => {
    expect(chunks.filter(({ code }) => SHAPE.test(code)).map(({ fileName }) => fileName)).toEqual([]);
  });
});
