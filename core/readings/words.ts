import en from '../../assets/words/en/readings.json' with { type: 'json' };

/** The sentences readings are told in, by language. */
export type ReadingWords = typeof en;
export const ENGLISH: ReadingWords = en;
