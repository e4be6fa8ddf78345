import type consents from '../../assets/words/en/consents.json';
import type fit from '../../assets/words/en/fit.json';
import type history from '../../assets/words/en/history.json';
import type paperFacts from '../../assets/words/en/paper-facts.json';
import type symptoms from '../../assets/words/en/symptoms.json';
import type tracing from '../../assets/words/en/tracing.json';

/** Words of one language that turn the journal's names into an owner's language. English sets the shape. */
export type JobWords = {
  readonly consents: typeof consents;
  readonly fit: typeof fit;
  readonly history: typeof history;
  readonly facts: typeof paperFacts;
  readonly symptoms: typeof symptoms;
  readonly tracing: typeof tracing;
};

/** A word by id from one of the catalogues; the id itself where there is none yet. */
export const wordOf = (catalogue: Readonly<Record<string, unknown>>, id: string): string => {
  const found = catalogue[id];
  return typeof found === 'string' ? found : id;
};
