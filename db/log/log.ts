/** What a log line may say beside its name: counts, times and names from the code. Never a value from the shop's life. */
export type LogFacts = { readonly [fact: string]: number | boolean | null | LogWord };
/** A text that stands in the code, marked where it is written. */
export type LogWord = { readonly word: string };

/** Writes one line. `event` is a literal in the code. */
export type Log = (event: string, facts?: LogFacts) => void;

/** Marks a text as one that the code (ours, or a system's error code) wrote. */
export const word = (text: string): LogWord => ({ word: text });

/** What may be logged of an error: its class, its code and where it rose. Its message may quote a value and stays out. */
export function errorFacts(error: unknown): LogFacts {
  if (!(error instanceof Error)) return { error: word(typeof error) };
  const code = 'code' in error && typeof error.code === 'string' ? word(error.code) : null;
  const places = [...(error.stack ?? '').matchAll(/^\s+at .*?([\w.-]+:\d+):\d+\)?$/gm)]
    .slice(0, 4)
    .map(([, place]) => place);
  return { error: word(error.name), code, at: word(places.join(' < ')) };
}
