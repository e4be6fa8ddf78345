import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, delimiter, join } from 'node:path';
import si from 'systeminformation';
import { afterAll, expect, it } from 'vitest';
import { readBytes } from '../../core/readings/readBytes.ts';
import { valueIn } from '../../core/readings/values.ts';
import { describeOverOpenData } from '../openData.ts';

/**
 * A second, general-purpose reader: the npm package systeminformation reads what a program called `dmidecode` prints.
 * It is given one that prints the dump. It knows no arrays, takes kB for MB and keeps placeholders; those are set aside.
 */
const folder = mkdtempSync(join(tmpdir(), 'second-reader-'));
const path = process.env.PATH;
afterAll(() => {
  process.env.PATH = path;
  rmSync(folder, { recursive: true });
});

function printed(dump: string): void {
  const program = join(folder, 'dmidecode');
  // Asked for one type it prints the records of that type alone, as the tool does.
  writeFileSync(
    program,
    `#!/bin/sh\nif [ "$2" = 2 ]; then awk '/^Handle/{on=($5=="2,")} on' '${dump}'; else awk '/^Handle/{on=($5=="16,"||$5=="17,")} on' '${dump}'; fi\n`,
  );
  chmodSync(program, 0o755);
  process.env.PATH = `${folder}${delimiter}${path}`;
}

const OTHER_MEMORY = 'Flash';

describeOverOpenData('the same as a second reader', (data) => {
  const dumps = data.files('hardware', /^dmi-/).map((file) => [basename(file), file] as const);

  it.skipIf(process.platform !== 'linux').each(dumps)('%s: the filled memory slots', async (_, dump) => {
    printed(dump);
    const theirs = (await si.memLayout())
      .filter(({ size, type }) => size > 0 && type !== '' && type !== OTHER_MEMORY)
      .map(({ size, type, formFactor, clockSpeed }) => [size / 1048576, type, formFactor, clockSpeed || null]);
    const ours = readBytes(readFileSync(dump))
      .slots.filter(({ filled }) => filled)
      .map((slot) => [slot.sizeMiB, slot.type, slot.formFactor, slot.configuredMTs ?? slot.speedMTs]);
    expect(ours).toEqual(theirs);
  });

  it.skipIf(process.platform !== 'linux').each(dumps)('%s: the board', async (name, dump) => {
    printed(dump);
    const { manufacturer, model } = await si.baseboard();
    const { board } = readBytes(readFileSync(dump));
    // Ours does not take a name that the end of the text may have cut in two.
    const theirs = name === 'dmi-044.txt' ? [null, null] : [valueIn(manufacturer), valueIn(model)];
    expect([board.vendor, board.name]).toEqual(theirs);
  });
});
