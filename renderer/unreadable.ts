import type { Words } from './kit/text/wordsOf.ts';

/** Numbers that are still read one by one; of more, how many there are and where they begin and end says it. */
const FEW = 3;

/** What a message says of entries that cannot be read: which key, under it, and its facts. */
export function unreadableFacts(entries: readonly number[], { list }: Pick<Words, 'list'>) {
  const n = entries.length;
  const [first = 0, last = 0] = [entries[0], entries.at(-1)];
  return {
    how: n > FEW ? 'many' : 'few',
    facts: { n, entries: list(entries.map(String)), first: String(first), last: String(last) },
  } as const;
}
