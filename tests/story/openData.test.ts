import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { expect, it } from 'vitest';
import { runDemo } from '../../electron/cli/demo/runDemo.ts';
import { describeOverOpenData } from '../openData.ts';

/** Real machines' own reports (dmidecode text from public repositories; see the README). */
describeOverOpenData('the whole job on every machine of the open data', (data) => {
  it.each(data.files('hardware', /^dmi-.*\.txt$/).map((file) => [basename(file), file] as const))(
    '%s is taken in, traced, mended and goes home, and nothing invented is passed off as read',
    async (_, file) => {
      const text = readFileSync(file, 'utf8');
      const said: string[] = [];
      const { ended } = await runDemo({ out: null, machine: text, print: (line) => void said.push(line) });
      if (!ended) throw new Error('the story did not end');
      expect(ended.job.stage).toBe('gone-home');
      expect(ended.missing).toEqual([]);
      const invented = ended.machine.slots.filter((slot) => slot.source === 'by-hand').map((slot) => slot.id);
      for (const slot of invented)
        expect(
          said.some((line) => line.includes('Entered by hand') && line.includes(`in ${slot} `)),
          slot,
        ).toBe(true);
    },
    60_000,
  );
});
