import cliWords from '../../assets/words/en/cli.json' with { type: 'json' };
import { fill } from '../../core/text/wordsFor.ts';
import { readPaper } from '../papers/readPaper.ts';
import { checkPaper, checkTyped, type PaperVerdict } from '../service/desk/sheets/checkPaper.ts';
import type { Io } from './command.ts';
import { type ShopWhere, withShop } from './withShop.ts';

const GENUINE = 0;
const ALTERED = 1;
const CANNOT_BE_ASKED = 2;
const GENUINE_AND_PAST = 3;

/** Checks a paper's file against what the shop in this folder issued; 0, 1, 2 or 3 as `knowngood verify` says. */
export async function verifyPaperFile(bytes: Uint8Array, where: ShopWhere, io: Io): Promise<number> {
  const inHand = await readPaper(bytes);
  if (inHand)
    return withShop(where, io, async ({ shop }) =>
      tell(await checkPaper(await shop.read(), { bytes, paper: inHand }, shop.id), io),
    );
  io.err(cliWords.verifyPaper.notAPaper);
  return CANNOT_BE_ASKED;
}

/** Checks a number and the content printed beside it, typed from a paper in hand. */
export const verifyTyped = (number: string, content: string, where: ShopWhere, io: Io): Promise<number> =>
  withShop(where, io, async ({ shop }) => tell(await checkTyped(await shop.read(), number, content), io));

function tell(verdict: PaperVerdict, io: Io): number {
  const words = cliWords.verifyPaper;
  switch (verdict.is) {
    case 'another-shop':
      io.err(fill(words.anotherShop, verdict));
      return CANNOT_BE_ASKED;
    case 'erased':
      io.out(fill(words.erased, verdict));
      return GENUINE_AND_PAST;
    case 'altered':
      io.out(fill(words.altered, verdict));
      return ALTERED;
    case 'picture-altered':
      io.out(fill(words.pictureAltered, verdict));
      return ALTERED;
    case 'painted-over':
      io.out(fill(words.paintedOver, verdict));
      return ALTERED;
    case 'genuine':
      io.out(fill(words.genuine, verdict));
      if (verdict.replacedBy === null) return GENUINE;
      io.out(fill(words.replaced, { by: verdict.replacedBy }));
      return GENUINE_AND_PAST;
  }
}
