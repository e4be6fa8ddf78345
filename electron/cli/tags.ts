import { randomInt } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import enPapers from '../../assets/words/en/papers.json' with { type: 'json' };
import { minorDigits } from '../../core/money/minorDigits.ts';
import type { TagStock } from '../../core/papers/sizes.ts';
import { ROLL_MM } from '../../core/papers/tags/stock.ts';
import { say } from '../../core/text/say.ts';
import { epochMs } from '../../core/time.ts';
import { drawTags, freshTags } from '../service/desk/files/printTags.ts';
import type { CliCommand } from './command.ts';
import { readOptions } from './options.ts';

const MOST = 1000;
const USUAL = 35;

/** `knowngood tags --out DIR [--count N] [--on A4|Letter|MM]`: tags to be bound by their first scan, as a PDF. */
export const tags: CliCommand = {
  name: 'tags',
  help: cliWords.tags,
  run: async (args, io) => {
    const asked = readOptions(args, ['out', 'count', 'on']);
    if ('wrong' in asked) {
      io.err(asked.wrong);
      return 2;
    }
    const { out, count = String(USUAL), on = 'A4' } = asked.options;
    const stock = stockOf(on);
    if (out === undefined || !stock || !/^\d+$/.test(count) || Number(count) < 1 || Number(count) > MOST) {
      io.err(say(cliWords.tagsAsked, { most: MOST, least: ROLL_MM.least, widest: ROLL_MM.most }));
      return 2;
    }
    // Without a shop's folder there is none to ask; a tag that is bound already is refused when it is scanned.
    const fresh = await freshTags(
      () => Promise.resolve(new Set()),
      Number(count),
      (below) => randomInt(below),
    );
    const setting = { locale: 'en', zone: 'UTC', pageSize: 'A4', words: enPapers, minorDigits } as const;
    mkdirSync(out, { recursive: true });
    const path = join(out, 'tags.pdf');
    writeFileSync(
      path,
      await drawTags({ tags: fresh, stock, shopName: 'Knowngood', at: epochMs(Date.now()) }, setting),
    );
    io.out(path);
    return 0;
  },
};

function stockOf(on: string): TagStock | null {
  if (on === 'A4' || on === 'Letter') return { on };
  const widthMm = Number(on.replace(/mm$/, ''));
  return widthMm >= ROLL_MM.least && widthMm <= ROLL_MM.most ? { on: 'roll', widthMm } : null;
}
