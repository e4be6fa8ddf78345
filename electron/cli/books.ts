import { writeFileSync } from 'node:fs';
import { z } from 'zod';
import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import { fill } from '../../core/text/wordsFor.ts';
import { epochMs } from '../../core/time.ts';
import { bookkeeping } from '../service/desk/sheets/bookkeeping.ts';
import { openEngine } from '../service/openEngine.ts';
import { openTools } from '../service/openTools.ts';
import type { CliCommand } from './command.ts';
import { readOptions } from './options.ts';
import { withShop } from './withShop.ts';

/** The first of these that is no real day written `YYYY-MM-DD`. */
const wrongDay = (days: readonly (string | undefined)[]): string | undefined =>
  days.find((day) => day !== undefined && !z.iso.date().safeParse(day).success);

/** `knowngood books`: the bills of some days as CSV, for bookkeeping. */
export const books: CliCommand = {
  name: 'books',
  help: cliWords.books,
  run: async (args, io) => {
    const asked = readOptions(args, ['data', 'wallet', 'out', 'from', 'to']);
    if ('wrong' in asked) {
      io.err(asked.wrong);
      return 2;
    }
    const { out, from, to } = asked.options;
    const wrong = wrongDay([from, to]);
    if (wrong !== undefined) {
      io.err(fill(cliWords.booksDay, { day: wrong }));
      return 2;
    }
    return withShop(asked.options, io, async ({ shop }) => {
      const tools = openTools(openEngine(), () => null);
      const days = { from: from ?? null, to: to ?? null };
      const table = await bookkeeping(await shop.read(), tools, days, epochMs(Date.now()));
      if (out === undefined) io.out(table.replace(/\r\n$/, ''));
      else writeFileSync(out, table);
      return 0;
    });
  },
};
