import { IntlMessageFormat } from 'intl-messageformat';
import { type Gap, gapsOf } from './gaps.ts';

/** What is put into the gaps of a text. How it is written is the caller's; a number is written by the filler. */
export type Facts = { readonly [gap: string]: string | number };
/** Fills the gaps of a text. */
export type Filler = (text: string, facts?: Facts) => string;

export type FillerSetting = {
  /** BCP 47: it picks plural forms by the plural rules of CLDR. */
  readonly locale: string;
  /** How numbers are written; left out, plainly and without groups, as in a file or a number of a paper. */
  readonly number?: Intl.NumberFormat;
  /** What stands in a gap that was given nothing. Left out, that is a defect, and thrown. */
  readonly lacking?: (gap: string, text: string) => string;
};

/**
 * The one gap filler. A text is a message as ICU writes them: `{name}` is a gap, `{n, plural, =0 {none} one {# slot}
 * other {# slots}}` a text by number, in which `#` is that number. A filler keeps what it has read of its texts.
 * @throws {Error} (the filler) for a gap without a fact unless `lacking` says what stands there, for a plural whose
 * fact is no number, and for a text that is no message: defects, each found by a test of the words.
 */
export function fillerOf({ locale, number = plainly(locale), lacking = isDefect }: FillerSetting): Filler {
  const plurals = new Intl.PluralRules(locale);
  const ordinals = new Intl.PluralRules(locale, { type: 'ordinal' });
  const formatters = {
    getNumberFormat: () => number,
    getDateTimeFormat: () => new Intl.DateTimeFormat(locale, { timeZone: 'UTC' }),
    getPluralRules: (_locale?: string | string[], options?: Intl.PluralRulesOptions) =>
      options?.type === 'ordinal' ? ordinals : plurals,
  };
  const read = new Map<string, { readonly message: IntlMessageFormat; readonly gaps: readonly Gap[] }>();
  const reading = (text: string) => {
    const known = read.get(text);
    if (known) return known;
    const message = new IntlMessageFormat(text, locale, undefined, { ignoreTag: true, formatters });
    const fresh = { message, gaps: gapsOf(message) };
    read.set(text, fresh);
    return fresh;
  };
  return (text, facts = {}) => {
    const { message, gaps } = reading(text);
    const filled = gaps.map(({ name, plural }) => {
      const fact = facts[name];
      if (plural && typeof fact !== 'number') throw new Error(`The text "${text}" needs a number for its {${name}}.`);
      if (fact === undefined) return [name, lacking(name, text)] as const;
      return [name, plural || typeof fact === 'string' ? fact : number.format(fact)] as const;
    });
    return String(message.format(Object.fromEntries(filled)));
  };
}

const plainly = (locale: string) => new Intl.NumberFormat(locale, { useGrouping: false, maximumFractionDigits: 20 });

function isDefect(gap: string, text: string): never {
  throw new Error(`The text "${text}" was not given its {${gap}}.`);
}
