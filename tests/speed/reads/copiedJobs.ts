import type { Tag } from '../../../core/custody/part.ts';
import { issueTag, isTag } from '../../../core/custody/tag.ts';
import { knownKind } from '../../../core/entries/entryTable.ts';
import type { Draft, Entry, Stream } from '../../../core/journal/entry.ts';
import type { OpenShop } from '../../../db/index.ts';
import { seededChance } from '../../../electron/cli/demo/seededChance.ts';
import { accept, asked } from '../../builders/shopFolder.ts';
import { streamsOf } from '../../oldShop/openKept.ts';

/** The stage an unfinished copy stops before: its loaners are all still on the wall. */
const UNTIL_STAGE = 'tracing';

/** Every entry of a shop, in order, what is personal opened. */
async function entriesOf(shop: OpenShop): Promise<readonly Entry[]> {
  const read = await shop.read();
  const entries: Entry[] = [];
  for (const stream of Object.keys(await streamsOf(shop)))
    entries.push(...(await read.entries(stream as Parameters<typeof read.entries>[0])));
  return entries.toSorted((a, b) => a.seq - b.seq);
}

/** What a job's entries are copied from, and under which names. */
type Told = {
  readonly entries: readonly Entry[];
  /** Names that each copy has of its own: of its job, owner, machine and parts. */
  readonly own: ReadonlySet<string>;
  readonly before: readonly Draft[];
};

async function toldIn(shop: OpenShop): Promise<Told> {
  const all = await entriesOf(shop);
  const first = all.find((entry) => entry.kind === 'taken-in')?.seq ?? 0;
  const told = all.filter((entry) => entry.seq >= first);
  const opening = all.filter((entry) => entry.seq < first);
  const sold = new Set(told.filter(({ kind }) => kind === 'title-passed').map(({ stream }) => stream));
  const known = new Set(opening.map(({ stream }) => stream).filter((stream) => !sold.has(stream)));
  const newHere = told.filter(({ stream }) => !known.has(stream) && !stream.startsWith('paper:'));
  const names = newHere.map(({ stream }) => stream.slice(stream.indexOf(':') + 1));
  return {
    entries: [...opening.filter(({ stream }) => sold.has(stream)), ...told],
    own: new Set(names),
    before: putBack(opening, told, known),
  };
}

type Moved = { readonly from: { readonly at: string }; readonly to: { readonly at: string } };

/** Moves of the shop's own parts back to where the story finds them: a copy begins as it did. */
function putBack(opening: readonly Entry[], told: readonly Entry[], known: ReadonlySet<Stream>): readonly Draft[] {
  return [...known].flatMap((stream) => {
    const moves = told.filter((entry) => entry.stream === stream && entry.kind === 'part-moved');
    const [first, last] = [moves[0], moves.at(-1)];
    if (!first || !last) return [];
    const to = (first.body as Moved).from;
    const from = (last.body as Moved).to;
    if (JSON.stringify(to) === JSON.stringify(from)) return [];
    const body = { ...(last.body as object), from, to, job: null, title: null };
    const filled = opening.find(
      ({ kind, body: of }) => kind === 'slot-filled' && (of as { part: string }).part === stream.slice(5),
    );
    return [draftOf({ ...last, body }), ...(filled ? [draftOf(filled)] : [])];
  });
}

const draftOf = ({ stream, kind, body }: Pick<Entry, 'stream' | 'kind' | 'body'>): Draft => ({
  stream,
  kind,
  v: knownKind(stream, kind)?.v ?? 1,
  body,
});

/** Which copies of the shop's one job are made. */
export type Copies = { readonly closed: number; readonly open: number };

/**
 * Writes the job of a shop over and over, each time under names, tags and paper numbers of its own, through the write
 * path that commands take: some to their end, the others up to the tracing. Their hours are as they were told.
 */
export async function copyJobs(
  shop: OpenShop,
  { closed, open }: Copies,
  said: (copies: number) => void,
): Promise<void> {
  const told = await toldIn(shop);
  const stop = told.entries.findIndex(
    ({ kind, body }) => kind === 'stage-entered' && (body as { stage: string }).stage === UNTIL_STAGE,
  );
  const { randomInt } = seededChance(15);
  for (let n = 0; n < closed + open; n++) {
    const entries = n < closed ? told.entries : told.entries.slice(0, stop);
    const named = namedAnew(told.own, `c${n}`, () => issueTag(randomInt));
    const drafts = [...(n < closed ? told.before : []), ...entries.map(draftOf)];
    const done = await shop.runCommand(asked({ command: `copy-${n}`, by: 'bram' }), () => accept(...named(drafts)));
    if (!done.ok) throw new Error(`Copy ${n} was refused: ${JSON.stringify(done.refusal)}`);
    said(n + 1);
  }
}

/** The same entries under other names: ids with an ending of their own, fresh tags, paper numbers of their own. */
function namedAnew(own: ReadonlySet<string>, ending: string, tag: () => Tag) {
  const tags = new Map<string, Tag>();
  const freshTag = (was: string) => {
    const fresh = tags.get(was) ?? tag();
    tags.set(was, fresh);
    return fresh;
  };
  const anew = (text: string): string => {
    if (own.has(text)) return text + ending;
    const [subject = '', id = ''] = text.split(':');
    if (own.has(id)) return `${subject}:${id}${ending}`;
    if (isTag(text)) return freshTag(text);
    return /^[A-Z]{1,4}-\d{4}-\d{4}$/.test(text) ? `${text}-${ending}` : text;
  };
  const inside = (value: unknown): unknown => {
    if (typeof value === 'string') return anew(value);
    if (Array.isArray(value)) return value.map(inside);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, inside(one)]));
  };
  return (drafts: readonly Draft[]): readonly Draft[] =>
    drafts.map(({ stream, body, ...rest }) => ({ ...rest, stream: anew(stream) as Stream, body: inside(body) }));
}
