import { createHash, randomBytes, randomInt } from 'node:crypto';
import consents from '../../assets/words/en/consents.json' with { type: 'json' };
import fit from '../../assets/words/en/fit.json' with { type: 'json' };
import history from '../../assets/words/en/history.json' with { type: 'json' };
import paperFacts from '../../assets/words/en/paper-facts.json' with { type: 'json' };
import enPapers from '../../assets/words/en/papers.json' with { type: 'json' };
import symptoms from '../../assets/words/en/symptoms.json' with { type: 'json' };
import tracing from '../../assets/words/en/tracing.json' with { type: 'json' };
import { tracingDoorFor } from '../../core/bench/tracingDoorFor.ts';
import type { NewId } from '../../core/ids.ts';
import type { JobWords } from '../../core/issuing/jobWords.ts';
import type { ShopSettings } from '../../core/job/shop.ts';
import { minorDigits } from '../../core/money/minorDigits.ts';
import type { PaperWords } from '../../core/text/paperWords.ts';
import type { Engine } from './desk/estimating/engine.ts';
import type { Tools } from './desk/tools.ts';

/** Languages that papers can be worded in; an owner with another language gets the shop's first. */
const PAPER_WORDS: Readonly<Record<string, PaperWords>> = { en: enPapers };

/** The words of papers in the language of this locale; English where there are none. */
export const paperWordsOf = (locale: string): PaperWords => PAPER_WORDS[new Intl.Locale(locale).language] ?? enPapers;

const JOB_WORDS: JobWords = { consents, fit, history, facts: paperFacts, symptoms, tracing };

/** Where ids and tags come from: the system's randomness, or a seed for a demonstration that repeats itself. */
export type Chance = { readonly newId: NewId; readonly randomInt: (below: number) => number };

const ALPHABET = 'abcdefghijkmnpqrstuvwxyz23456789';
/** Twenty characters of thirty-two: a hundred random bits. */
const ID_LENGTH = 20;

export const systemChance: Chance = {
  newId: () => Array.from(randomBytes(ID_LENGTH), (byte) => ALPHABET[byte % ALPHABET.length]).join(''),
  randomInt: (below) => randomInt(below),
};

/** How figures are written: as in the shop's country, in the language that the words are really in. */
function localeOf(language: string, settings: ShopSettings): string {
  if (language === settings.language && language in PAPER_WORDS) return settings.locale;
  if (language in PAPER_WORDS) return language;
  const { region } = new Intl.Locale(settings.locale);
  return region === undefined ? 'en' : `en-${region}`;
}

/** What core is handed beside the view: ids, chance, hashing, the last sealed head, the tracing engine, words for papers. */
export function openTools(
  engine: Engine,
  lastHead: () => string | null,
  chance: Chance = systemChance,
  shopId?: string,
): Tools {
  return {
    newId: chance.newId,
    randomInt: chance.randomInt,
    ...(shopId !== undefined && { shopId }),
    sha256: (text) => createHash('sha256').update(text, 'utf8').digest('hex'),
    get lastHead() {
      return lastHead();
    },
    tracing: (shop) => tracingDoorFor(engine.live, engine.modelFor(shop)),
    jobWords: () => JOB_WORDS,
    paperSetting: (language, settings) => ({
      locale: localeOf(language, settings),
      zone: settings.zone,
      pageSize: settings.paperSize,
      words: PAPER_WORDS[language] ?? enPapers,
      minorDigits,
    }),
  };
}
