import words from '../../assets/words/en/shell.json' with { type: 'json' };

/** What the app says outside its page: menu, start-up failures, the door of the loopback address. */
export const shellWords = words;

/** Puts facts into a sentence: `{path}` becomes the fact of that name. */
export function fill(sentence: string, facts: Readonly<Record<string, unknown>>): string {
  return sentence.replace(/\{(\w+)\}/g, (_, name: string) => String(facts[name] ?? '?'));
}
