import { createContext, type ReactNode, useContext, useMemo } from 'react';
import { I18nProvider } from 'react-aria-components';
import { type Words, type WordsSetting, wordsOf } from './wordsOf.ts';

export type { Words, WordsSetting } from './wordsOf.ts';

const WordsContext = createContext<Words | null>(null);

/** Hands the shop's texts, zone and number forms to everything inside it. */
export function WordsProvider({ children, ...setting }: Omit<WordsSetting, 'now'> & { readonly children: ReactNode }) {
  const { catalogue, locale, zone, currencyDigits } = setting;
  const words = useMemo(
    () => wordsOf({ catalogue, locale, zone, now: Date.now, ...(currencyDigits ? { currencyDigits } : {}) }),
    [catalogue, locale, zone, currencyDigits],
  );
  return (
    <I18nProvider locale={locale}>
      <WordsContext.Provider value={words}>{children}</WordsContext.Provider>
    </I18nProvider>
  );
}

/** The words of the nearest WordsProvider. Throws outside of one: a defect of the page. */
export function useWords(): Words {
  const words = useContext(WordsContext);
  if (words === null) throw new Error('useWords outside of a WordsProvider');
  return words;
}
