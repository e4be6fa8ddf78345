import type { BrokenLink } from '../../core/journal/chain.ts';
import type { Stream } from '../../core/journal/entry.ts';
import type { Unreadable } from '../journal/readRow.ts';
import { type Log, word } from '../log/log.ts';
import type { StandingKept } from './standing.ts';

/** What is no question of versions: somebody, or the disk, changed what was written. */
const CHANGED_ON_DISK: ReadonlySet<string> = new Set<Unreadable['wrong'] | BrokenLink>([
  'seq-not-next',
  'not-linked-to-the-one-before',
  'bytes-do-not-fit-hash',
  'not-an-entry',
  'not-in-its-place',
]);

/** One entry that is not as it was written, or cannot be read: which, why, and the stream that is set apart for it. */
export type Told = {
  readonly seq: number;
  readonly wrong: Unreadable['wrong'] | BrokenLink;
  /** Null where the chain is broken at an entry that can be read all the same. */
  readonly stream: Stream | null;
};

/** What is known of entries that cannot be read. */
export type Telling = {
  /** Says each once, and that the shop's own stream is set apart where it is one of those. */
  readonly tell: (told: Told) => void;
  /** The streams that such entries were met in so far. */
  readonly setApart: () => ReadonlySet<Stream>;
};

/** Nothing was met yet. */
export function openTelling(standing: StandingKept, log: Log): Telling {
  const changed = new Set<number>();
  const strange = new Set<number>();
  const ofTheShop = new Set<number>();
  const streams = new Set<Stream>();
  const tell = ({ seq, wrong, stream }: Told) => {
    if (stream !== null) streams.add(stream);
    if (stream === 'shop' && !ofTheShop.has(seq)) {
      ofTheShop.add(seq);
      standing.say({ notice: 'shop-set-apart', first: Math.min(...ofTheShop) });
    }
    const isChanged = CHANGED_ON_DISK.has(wrong);
    const known = isChanged ? changed : strange;
    if (known.has(seq)) return;
    known.add(seq);
    log(isChanged ? 'entry-broken' : 'entry-unreadable', { seq, wrong: word(wrong) });
    const facts = { count: known.size, first: Math.min(...known) };
    standing.say({ notice: isChanged ? 'entries-broken' : 'entries-unreadable', ...facts });
  };
  return { tell, setApart: () => streams };
}
