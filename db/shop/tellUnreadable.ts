import type { Unreadable } from '../journal/readRow.ts';
import { type Log, word } from '../log/log.ts';
import type { StandingKept } from './standing.ts';

/** What is no question of versions: somebody, or the disk, changed what was written. */
const CHANGED_ON_DISK: ReadonlySet<string> = new Set<Unreadable['wrong']>([
  'bytes-do-not-fit-hash',
  'not-an-entry',
  'not-in-its-place',
]);

/** One entry that cannot be read: which, why, and in which stream, where that is known. */
export type Told = { readonly seq: number; readonly wrong: string; readonly stream: string | null };

/** Says each entry that cannot be read once, and that the shop's own stream is set apart where it is one of those. */
export function openTelling(standing: StandingKept, log: Log): (told: Told) => void {
  const changed = new Set<number>();
  const strange = new Set<number>();
  const ofTheShop = new Set<number>();
  return ({ seq, wrong, stream }) => {
    if (stream === 'shop' && !ofTheShop.has(seq)) {
      ofTheShop.add(seq);
      standing.say({ notice: 'shop-set-apart', first: Math.min(...ofTheShop) });
    }
    const isChanged = stream === null || CHANGED_ON_DISK.has(wrong);
    const known = isChanged ? changed : strange;
    if (known.has(seq)) return;
    known.add(seq);
    log(isChanged ? 'entry-broken' : 'entry-unreadable', { seq, wrong: word(wrong) });
    const facts = { count: known.size, first: Math.min(...known) };
    standing.say({ notice: isChanged ? 'entries-broken' : 'entries-unreadable', ...facts });
  };
}
